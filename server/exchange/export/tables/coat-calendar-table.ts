import { type BuyingCalendar, dateOfMinute } from '../../../planning/buying/dates/needed-by.ts';
import type { CalendarTaskPlan } from '../../../planning/calendar/calendar-plan.ts';
import { clockMinute } from '../../../planning/display/clock-minute.ts';
import type { ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';
import { nameBook } from '../name-book.ts';
import { KIND_WORDS, METHOD_WORDS } from './step-words.ts';

const MIN_PER_HOUR = 60;
const MIN_PER_DAY = 1440;

/**
 * Every task of the coat calendar by the clock on the wall, as dates that sort as text: 2027-03-14 09:30. Empty before a
 * calendar is worked out; one of an earlier state of the project says so in every row.
 */
export function coatCalendarTable(input: ProjectInput, calendar: BuyingCalendar | null): ExportTable {
  const { text, count, area } = columnMakers(input.settings);
  const names = nameBook(input);
  const at = (minute: number | null): string | null =>
    minute === null || calendar === null ? null : moment(Math.round(minute), calendar);
  return exportTable<CalendarTaskPlan>(
    'coat-calendar',
    'Coat calendar',
    [
      text('Begins', 18, ({ startMinute }) => at(startMinute)),
      text('Ends', 18, ({ endMinute }) => at(endMinute)),
      text('Finish', 24, ({ recipeId }) => names.recipe(recipeId)),
      text('Batch', 8, ({ batchId }) => batchId),
      text('Work', 12, ({ kind }) => KIND_WORDS[kind]),
      text('With', 30, ({ name }) => name),
      text('Method', 15, ({ method }) => (method === null ? null : METHOD_WORDS[method])),
      text('Face', 8, ({ face }) => face),
      area('Area', ({ areaM2 }) => areaM2),
      count('Hands on (min)', ({ handsOnMin }) => handsOnMin),
      text('Dry to touch', 18, ({ touchDryMinute }) => at(touchDryMinute)),
      text('Dry to handle', 18, ({ handleDryMinute }) => at(handleDryMinute)),
      text('Not before', 18, ({ allowedFromMinute }) => at(allowedFromMinute)),
      text('Not after', 18, ({ allowedToMinute }) => at(allowedToMinute)),
      text('State', 10, ({ state }) => state),
      text('Up to date', 12, () => (calendar?.stale === true ? 'no, planned anew' : 'yes')),
    ],
    calendar?.plan.tasks ?? [],
  );
}

function moment(minute: number, calendar: BuyingCalendar): string {
  const clock = clockMinute(minute, calendar.clockShifts);
  const ofDay = ((clock % MIN_PER_DAY) + MIN_PER_DAY) % MIN_PER_DAY;
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${dateOfMinute(minute, calendar)} ${two(Math.floor(ofDay / MIN_PER_HOUR))}:${two(ofDay % MIN_PER_HOUR)}`;
}
