import type { Problem } from '../problem.ts';
import { calendarBlocks } from './calendar-blocks.ts';
import type { CalendarInput } from './calendar-input.ts';
import type { CalendarPlan } from './calendar-plan.ts';
import { calendarTasks } from './calendar-tasks.ts';
import { MOST_TASKS } from './constants.ts';
import { describeSchedule } from './describe-schedule.ts';
import { factProblems } from './fact-problems.ts';
import { requireCalendarInput } from './require-calendar-input.ts';
import { solveCalendar } from './solve-calendar.ts';

/**
 * When is every coat laid, every face sanded, and when is the job ready?
 *
 * @param input see calendar-input.ts; minutes since midnight of day 0, areas m2, temperatures C
 * @returns the plan that is ready earliest and, among those, needs the fewest visits to the shop; with a bound, and
 *   with what is in the way when nothing fits
 *
 * Source: shop rules and label figures as named in calendarTasks and shopJobOf; the searches as named in searchShop and
 * exactShop. Valid range: see requireCalendarInput; else a RangeError. Departures: none.
 * Example: one panel of 1 m2, two brushed coats that dry 24 h, shop open 08:00 to 18:00: day 0 and day 1.
 */
export function planCalendar(input: CalendarInput): CalendarPlan {
  requireCalendarInput(input);
  const tooLarge = tooManyTasks(input);
  if (tooLarge !== null) return tooLarge;
  const solved = solveCalendar(input);
  const { batches, job, schedule, bound } = solved;
  const problems: Problem[] = [...solved.problems, ...factProblems(input, batches)];
  const leftOut = solved.problems.some(({ severity }) => severity === 'error');
  const empty = {
    tasks: [],
    batches: [],
    readyToHandleMinute: null,
    readyToAssembleMinute: null,
    curedMinute: null,
    uncured: [],
    boundMinute: null,
    gap: null,
    proven: solved.proven,
    visits: 0,
    visitsProven: false,
    blocks: [],
    problems,
  };
  if (batches.length === 0) return { ...empty, state: 'nothing-to-do' };
  if (schedule === null) {
    const blocks = calendarBlocks(input, solved);
    for (const { message, waysOut } of blocks)
      problems.push({
        code: 'calendar-does-not-fit',
        severity: 'error',
        at: { table: 'settings', id: null, field: 'calendar' },
        message,
        wayOut: waysOut[0]?.message ?? 'No single change that was tried is enough; change several at once.',
      });
    return { ...empty, state: solved.proven ? 'does-not-fit' : 'not-found', blocks };
  }

  const described = describeSchedule(input, batches, job, schedule);
  const cured = described.batches.map(({ curedMinute }) => curedMinute);
  const latest = (of: 'readyToHandleMinute' | 'readyToAssembleMinute'): number =>
    Math.max(...described.batches.map((batch) => batch[of]));
  const ready = latest('readyToAssembleMinute');
  const boundMinute = solved.proven ? ready : bound.readyMinute;
  const known = cured.filter((minute) => minute !== null);
  return {
    ...empty,
    ...described,
    state: 'planned',
    readyToHandleMinute: leftOut ? null : latest('readyToHandleMinute'),
    readyToAssembleMinute: leftOut ? null : ready,
    curedMinute: leftOut || known.length < cured.length ? null : Math.max(...known),
    boundMinute,
    gap: (ready - boundMinute) / Math.max(1, boundMinute - input.startMinute),
    visits: solved.visits,
    visitsProven: solved.visitsProven,
  };
}

/** The answer for a job beyond what can be planned while someone waits; null for any other. */
function tooManyTasks(input: CalendarInput): CalendarPlan | null {
  const { batches, problems } = calendarTasks(input);
  const count = batches.reduce((sum, { tasks }) => sum + tasks.length, 0);
  if (count <= MOST_TASKS) return null;
  const message = `The calendar would have ${count} tasks in ${batches.length} batches; it plans up to ${MOST_TASKS}.`;
  const wayOut = 'Allow larger batches, make more room to dry, or plan fewer parts at a time.';
  const at = { table: 'settings', id: null, field: 'calendar' } as const;
  return {
    state: 'not-found',
    tasks: [],
    batches: [],
    readyToHandleMinute: null,
    readyToAssembleMinute: null,
    curedMinute: null,
    uncured: [],
    boundMinute: null,
    gap: null,
    proven: false,
    visits: 0,
    visitsProven: false,
    blocks: [{ kind: 'rack', taskId: null, message, waysOut: [] }],
    problems: [...problems, { code: 'calendar-does-not-fit', severity: 'error', at, message, wayOut }],
  };
}
