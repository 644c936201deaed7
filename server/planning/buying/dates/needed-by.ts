import type { CalendarPlan } from '../../calendar/calendar-plan.ts';
import type { ClockShift } from '../../calendar/clock-shift.ts';
import { neededByMinute } from '../../calendar/needed-by-minute.ts';
import { dateOfDay, dayNumber } from '../../calendar/project/day-number.ts';
import { clockMinute } from '../../display/clock-minute.ts';
import type { BuyLine } from '../../plan-output.ts';
import type { ProjectInput } from '../../project-input.ts';

/** The coat calendar as last worked out, and the date its minutes are counted from. */
export interface BuyingCalendar {
  readonly plan: CalendarPlan;
  readonly firstDate: string;
  readonly clockShifts: readonly ClockShift[];
  /** The plan is of an earlier state of the project. */
  readonly stale: boolean;
}

export interface NeededBy {
  /** YYYY-MM-DD; null when the calendar does not say. */
  readonly date: string | null;
  /** Why then, or why not known: a sentence. */
  readonly why: string;
}

const MIN_PER_DAY = 1440;

/** Which day is a minute of the calendar? Definition; minutes as in `CalendarPlan`. */
export function dateOfMinute(minute: number, { firstDate, clockShifts }: BuyingCalendar): string {
  return dateOfDay(dayNumber(firstDate) + Math.floor(clockMinute(minute, clockShifts) / MIN_PER_DAY));
}

/**
 * On which day is each line of the buy list first needed?
 *
 * @param calendar null when there is none yet
 * @returns a reader of lines. What a step of the calendar uses is needed at its first task that is not done; all else
 *   that goes into the parts (sheets, banding, glue, rags) no later than the first task, for parts are made before they
 *   are coated; hardware and other extras when the parts are ready to assemble.
 *
 * Source: a rule of ours. Valid range: any plan. Departures: none.
 * Example: the first coat is on Tuesday: the sheets are needed no later than Tuesday.
 */
export function neededByReader(
  input: ProjectInput,
  calendar: BuyingCalendar | null,
): (line: Pick<BuyLine, 'productId' | 'category'>) => NeededBy {
  if (calendar === null)
    return () => ({
      date: null,
      why: 'The coat calendar is not worked out yet, so the day of need is not known.',
    });
  const { plan, stale } = calendar;
  if (plan.state !== 'planned')
    return () => ({
      date: null,
      why:
        plan.state === 'nothing-to-do'
          ? 'Nothing is to be coated, so the calendar gives no day of need.'
          : 'The coat calendar does not fit, so it gives no day of need.',
    });
  const open = plan.tasks.filter(({ state }) => state !== 'done' && state !== 'assumed');
  const first = open.reduce(
    (least, { startMinute }) => Math.min(least, startMinute),
    Number.POSITIVE_INFINITY,
  );
  const byProduct = neededByMinute(input, plan);
  const late = stale ? ' The calendar is of an earlier state of the project.' : '';
  const on = (minute: number, why: string): NeededBy => ({
    date: dateOfMinute(minute, calendar),
    why: `${why}${late}`,
  });
  return ({ productId, category }) => {
    const own = productId === null ? undefined : byProduct[productId];
    if (own !== undefined) return on(own, 'the first task of the calendar that uses it.');
    if (category === 'hardware' || category === 'other') {
      const ready = plan.readyToAssembleMinute;
      return ready === null
        ? { date: null, why: 'The calendar does not say when the parts are ready to assemble.' }
        : on(ready, 'the parts are ready to assemble.');
    }
    if (open.length === 0)
      return { date: null, why: 'Every task of the calendar is done, so it gives no day of need.' };
    return on(first, 'no later than the first task of the calendar.');
  };
}
