import { formatArea } from '../display/format-area.ts';
import type { CalendarInput, CalendarVapour } from './calendar-input.ts';
import type { CalendarBlock } from './calendar-plan.ts';
import { calendarWaysOut } from './calendar-ways-out.ts';
import { AREA_DUST_M2 } from './constants.ts';
import { type SolvedCalendar, solveCalendar } from './solve-calendar.ts';
import { taskInTheWay } from './task-in-the-way.ts';

/** What is in the way, without the ways out. */
export type BlockFinding = Omit<CalendarBlock, 'waysOut'>;

/**
 * What is in the way when no plan fits, and what would free it?
 *
 * @param input see calendar-input.ts; minutes since midnight of day 0
 * @param solved its outcome, without a schedule
 * @returns one block; its ways out have been planned and do fit
 *
 * Source: a rule of ours: first what a task alone cannot meet (a window, the air, drying, the rack), then what a batch
 * alone cannot meet (pins, work done too long ago, recoat intervals that close), then what batches cannot meet together.
 * What is blamed has been tried: without it a plan is found. Valid range: any input. Departures: the first finding is
 * reported, not every one.
 */
export function calendarBlocks(input: CalendarInput, solved: SolvedCalendar): CalendarBlock[] {
  const finding = structuralFinding(input, solved) ?? batchFinding(input, solved) ?? jointFinding(input);
  return [{ ...finding, waysOut: calendarWaysOut(input) }];
}

function structuralFinding(input: CalendarInput, { job, batches }: SolvedCalendar): BlockFinding | null {
  if (job.windows.length === 0)
    return {
      kind: 'working-window',
      taskId: null,
      message: 'There are no working hours between the start and the end of the calendar.',
    };
  const tasks = batches.flatMap((batch) => batch.tasks);
  for (const [index, task] of tasks.entries()) {
    const shopTask = job.tasks[index];
    if (shopTask === undefined || shopTask.doneFrom !== null) continue;
    const finding = taskInTheWay(input, task, shopTask, job);
    if (finding !== null) return finding;
  }
  const { units = 'metric' } = input;
  for (const batch of batches)
    if (batch.footprintM2 > (input.rackM2 ?? Number.POSITIVE_INFINITY) + AREA_DUST_M2)
      return {
        kind: 'rack',
        taskId: batch.tasks[0]?.id ?? null,
        message: `Batch ${batch.id} takes ${formatArea(batch.footprintM2, { units })} of rack, but the rack has ${formatArea(input.rackM2, { units })}.`,
      };
  return null;
}

/** One batch that does not fit though it had the shop to itself. */
function batchFinding(input: CalendarInput, { bound, batches }: SolvedCalendar): BlockFinding | null {
  const stuck = batches[bound.aloneReady.indexOf(Number.POSITIVE_INFINITY)];
  if (stuck === undefined) return null;
  const own = new Set(stuck.tasks.map(({ id }) => id));
  const pin = input.pins.find(({ taskId }) => own.has(taskId));
  if (pin !== undefined && fits({ ...input, pins: [] }))
    return {
      kind: 'pin',
      taskId: pin.taskId,
      message: `Batch ${stuck.id} cannot keep what is pinned in it.`,
    };
  const fact = input.done.findLast(({ taskId }) => own.has(taskId));
  if (fact !== undefined && fits({ ...input, done: [] }))
    return {
      kind: 'done',
      taskId: fact.taskId,
      message: `After what was done on batch ${stuck.id}, the time for its next coat has passed or cannot be met.`,
    };
  if (input.vapour !== undefined && fits(withoutVapour(input)))
    return { kind: 'vapour', taskId: stuck.tasks.at(-1)?.id ?? null, message: vapourWords(input.vapour) };
  const closing = stuck.tasks.find(({ coat }) => coat?.recoat.every(({ toMin }) => toMin !== null) === true);
  if (closing !== undefined && fits(withoutClosing(input)))
    return {
      kind: 'recoat',
      taskId: closing.id,
      message: `"${closing.name || closing.kind}" must be followed by the next coat before its recoat time ends, and the working hours and the air do not allow that.`,
    };
  return {
    kind: 'horizon',
    taskId: stuck.tasks.at(-1)?.id ?? null,
    message: `Batch ${stuck.id} cannot be over within ${input.horizonDays} days.`,
  };
}

/** Batches that fit alone, but not together. */
function jointFinding(input: CalendarInput): BlockFinding {
  const pin = input.pins[0];
  if (pin !== undefined && fits({ ...input, pins: [] }))
    return { kind: 'pin', taskId: pin.taskId, message: 'The pinned tasks cannot all be kept.' };
  if (fits({ ...input, hands: input.hands + 1 }))
    return {
      kind: 'hands',
      taskId: null,
      message: `Hands: with ${input.hands} at work not everything can be done in time.`,
    };
  if (input.rackM2 !== null && fits({ ...input, rackM2: null }))
    return {
      kind: 'rack',
      taskId: null,
      message: `The rack of ${formatArea(input.rackM2, { units: input.units ?? 'metric' })} is too small for the batches that must dry at the same time.`,
    };
  if (input.vapour !== undefined && fits(withoutVapour(input)))
    return { kind: 'vapour', taskId: null, message: vapourWords(input.vapour) };
  if (!input.sandsApart && fits({ ...input, sandsApart: true }))
    return {
      kind: 'dust',
      taskId: null,
      message: 'There is no time to sand while nothing is wet in the same air.',
    };
  return {
    kind: 'horizon',
    taskId: null,
    message: `No plan was found that is over within ${input.horizonDays} days.`,
  };
}

function fits(input: CalendarInput): boolean {
  return solveCalendar(input, 'any').schedule !== null;
}

function withoutVapour({ vapour: _, ...rest }: CalendarInput): CalendarInput {
  return rest;
}

function vapourWords({ apartMin }: CalendarVapour): string {
  const hours = Math.round(apartMin / 6) / 10;
  return `To stay under the health limit, coats must begin ${hours} h apart, and the recoat times or the working hours do not allow that. More fresh air or a product with less solvent shortens it.`;
}

function withoutClosing(input: CalendarInput): CalendarInput {
  return {
    ...input,
    recipes: input.recipes.map((recipe) => ({
      ...recipe,
      steps: recipe.steps.map((step) => ({
        ...step,
        coat: step.coat && {
          ...step.coat,
          recoat: step.coat.recoat.map((interval) => ({ ...interval, toMin: null })),
        },
      })),
    })),
  };
}
