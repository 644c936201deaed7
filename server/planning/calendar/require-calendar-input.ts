import { MINUTES_PER_DAY, MINUTES_PER_HOUR } from '../climate/constants.ts';
import { requireWithin } from '../climate/require-within.ts';
import type { CalendarInput } from './calendar-input.ts';
import { DAYS_PER_WEEK, MOST_HORIZON_DAYS } from './constants.ts';

/**
 * Is the input one the calendar can be asked about? Throws where it is not.
 *
 * @param input see calendar-input.ts; the climate has passed climateProblems
 * @throws RangeError naming the field, the value, the range and the unit
 *
 * Source: definition. Valid range: as stated per field. Departures: what a user can type (hours, pins, done facts) is
 * checked by the layer that reads it; here only what would make the searches wrong or endless.
 */
export function requireCalendarInput(input: CalendarInput): void {
  requireWithin('firstWeekday', input.firstWeekday, 0, DAYS_PER_WEEK - 1, '');
  requireWithin('horizonDays', input.horizonDays, 1, MOST_HORIZON_DAYS, 'days');
  requireWithin('startMinute', input.startMinute, 0, input.horizonDays * MINUTES_PER_DAY, 'min');
  requireWithin('stepMin', input.stepMin, 1, MINUTES_PER_HOUR, 'min');
  if (MINUTES_PER_HOUR % input.stepMin !== 0)
    throw new RangeError(`stepMin must divide ${MINUTES_PER_HOUR} min, got ${input.stepMin}`);
  requireWithin('hands', input.hands, 1, 20, '');
  requireWithin('iterations', input.iterations, 1, 10_000_000, '');
  if (input.rackM2 !== null) requireWithin('rackM2', input.rackM2, 0, Infinity, 'm2');
  if (input.largestBatchM2 !== null)
    requireWithin('largestBatchM2', input.largestBatchM2, 1e-6, Infinity, 'm2');
  requireWithin('woodWarmerC', input.woodWarmerC, -60, 60, 'C');
  for (const [index, { fromMinute, aheadMin }] of input.clockShifts.entries()) {
    const before = input.clockShifts[index - 1]?.fromMinute ?? 0;
    requireWithin(`clockShifts[${index}].fromMinute`, fromMinute, before, Infinity, 'min');
    requireWithin(`clockShifts[${index}].aheadMin`, aheadMin, -MINUTES_PER_DAY, MINUTES_PER_DAY, 'min');
  }
  if (input.hours.length !== DAYS_PER_WEEK)
    throw new RangeError(`hours must have ${DAYS_PER_WEEK} lists, got ${input.hours.length}`);
  for (const [day, windows] of input.hours.entries())
    for (const { fromMin, toMin } of windows) {
      requireWithin(`hours[${day}].fromMin`, fromMin, 0, MINUTES_PER_DAY, 'min');
      requireWithin(`hours[${day}].toMin`, toMin, fromMin, MINUTES_PER_DAY, 'min');
    }
  for (const { id, count, showM2, backM2, edgeM2 } of input.pieces) {
    requireWithin(`pieces[${id}].count`, count, 0, 100_000, '');
    if (count % 1 !== 0) throw new RangeError(`pieces[${id}].count must be whole, got ${count}`);
    for (const area of [showM2, backM2, edgeM2]) requireWithin(`pieces[${id}] area`, area, 0, 10_000, 'm2');
  }
  for (const recipe of input.recipes)
    for (const { id, coats, coat } of recipe.steps) {
      requireWithin(`steps[${id}].coats`, coats, 1, 100, '');
      for (const { fromMin, toMin } of coat?.recoat ?? []) {
        requireWithin(`steps[${id}].recoat.fromMin`, fromMin, 0, Infinity, 'min');
        if (toMin !== null) requireWithin(`steps[${id}].recoat.toMin`, toMin, fromMin, Infinity, 'min');
      }
    }
  if (input.vapour !== undefined) {
    requireWithin('vapour.apartMin', input.vapour.apartMin, 0, Number.MAX_SAFE_INTEGER, 'min');
    for (const [id, mostM2] of Object.entries(input.vapour.mostM2))
      requireWithin(`vapour.mostM2[${id}]`, mostM2, Number.MIN_VALUE, Infinity, 'm2');
  }
  for (const { taskId, startMinute } of input.pins)
    requireWithin(`pins[${taskId}].startMinute`, startMinute, 0, Infinity, 'min');
  for (const { taskId, startMinute, endMinute } of input.done) {
    requireWithin(`done[${taskId}].startMinute`, startMinute, 0, Infinity, 'min');
    requireWithin(`done[${taskId}].endMinute`, endMinute, startMinute, Infinity, 'min');
  }
}
