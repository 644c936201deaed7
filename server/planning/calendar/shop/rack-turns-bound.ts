import { AREA_DUST_M2 } from '../constants.ts';
import type { DryingClock } from './drying-clock.ts';
import type { ShopJob, ShopTask } from './shop-job.ts';
import { nextStart } from './start-ranges.ts';

/** Most states looked at: some tenths of a second of work. Above it there is no answer. */
const MOST_STATES = 12_000;

/** Chains that pass the same steps, on pieces of different size. */
interface TurnGroup {
  readonly size: number;
  readonly readyClock: DryingClock;
  readonly steps: readonly TurnStep[];
  /** Which of the steps are coats still to be laid. */
  readonly coats: readonly number[];
}

interface TurnStep {
  /** One of each length; never empty. Equal in all but their times. */
  readonly tasks: readonly ShopTask[];
  readonly head: number;
}

/** How many chains of every group have so many coats laid, and when each kind of coat could be the last one laid. */
interface TurnState {
  readonly counts: readonly Int32Array[];
  /** Last stroke of the last coat, by kind: group, then coat. Infinity where it cannot be the last. */
  readonly lastStroke: Float64Array;
}

/**
 * When, at the earliest, can batches that must take turns on the rack all be ready?
 *
 * @param job see shop-job.ts; minutes since midnight of day 0
 * @param heads no task starts before these
 * @returns a minute before which not all are ready; 0 where no two batches exclude each other, or there are too many
 *
 * Source: of batches larger than half the rack no two lie on it together, so their coats follow one another, each laid
 * within hours and air once the coat before has left. Over all orders of the coats, by dynamic programming on how many
 * are laid (M. Held, R. Karp, Journal of SIAM 10, 1962): as drying never ends sooner for a later start, of two ways to
 * the same state the one that is over sooner is at least as good. Hands, dust, and the time since a batch's own coat
 * before are left out, except directly after it. Valid range: any job. Departures: none.
 * Example: two coats on each of two batches, laid in the evening and dry in the morning: not before the fourth morning.
 */
export function rackTurnsBound(job: ShopJob, heads: ArrayLike<number>): number {
  const groups = turnGroups(job, heads);
  const chains = groups.reduce((sum, { size }) => sum + size, 0);
  if (chains < 2 || statesOf(groups) > MOST_STATES) return 0;
  const offsets = groups.map((_, at) =>
    groups.slice(0, at).reduce((sum, { coats }) => sum + coats.length, 0),
  );
  const kinds = groups.reduce((sum, { coats }) => sum + coats.length, 0);

  const counts = groups.map(({ size, coats }) => {
    const none = new Int32Array(coats.length + 1);
    none[0] = size;
    return none;
  });
  let layer = new Map<string, TurnState>([['', { counts, lastStroke: new Float64Array(kinds) }]]);
  const turns = groups.reduce((sum, { size, coats }) => sum + size * coats.length, 0);
  for (let turn = 0; turn < turns; turn++) {
    const next = new Map<string, TurnState>();
    for (const state of layer.values()) advance(state, turn === 0, next);
    layer = next;
  }
  let bound = Number.POSITIVE_INFINITY;
  for (const { lastStroke } of layer.values())
    for (const [group, { coats, readyClock }] of groups.entries()) {
      const stroke = lastStroke[(offsets[group] as number) + coats.length - 1] as number;
      if (stroke < Number.POSITIVE_INFINITY) bound = Math.min(bound, readyClock(stroke));
    }
  return bound;

  /** Every coat that may be laid next. */
  function advance(state: TurnState, isFirst: boolean, next: Map<string, TurnState>): void {
    const leaves = isFirst ? Number.NEGATIVE_INFINITY : freeWithout(state, -1);
    for (const [group, { steps, coats }] of groups.entries())
      for (let coat = 0; coat < coats.length; coat++) {
        const waiting = state.counts[group]?.[coat] ?? 0;
        if (waiting === 0) continue;
        const index = coats[coat] as number;
        // The coat before may be this batch's own, or another's that is dry to handle.
        const before = (offsets[group] as number) + coat - 1;
        const own = isFirst || coat === 0 ? Number.POSITIVE_INFINITY : (state.lastStroke[before] as number);
        const isOwn = own < Number.POSITIVE_INFINITY;
        const free = isOwn && waiting === 1 ? freeWithout(state, before) : leaves;
        let stroke = laidFrom(steps[index] as TurnStep, free, 0);
        if (isOwn) stroke = Math.min(stroke, strokeAfterOwn(steps, coats[coat - 1] as number, index, own));
        if (stroke === Number.POSITIVE_INFINITY) continue;
        put(next, state, group, coat, stroke);
      }
  }

  /** When the last coat is dry to handle, if it is of any kind but one. */
  function freeWithout({ lastStroke }: TurnState, kind: number): number {
    let free = Number.POSITIVE_INFINITY;
    for (const [group, { steps, coats }] of groups.entries())
      for (let coat = 0; coat < coats.length; coat++) {
        const at = (offsets[group] as number) + coat;
        const stroke = lastStroke[at] as number;
        if (at === kind || stroke === Number.POSITIVE_INFINITY) continue;
        free = Math.min(free, firstOf(steps[coats[coat] as number] as TurnStep).handle(stroke));
      }
    return free;
  }

  function put(
    next: Map<string, TurnState>,
    { counts }: TurnState,
    group: number,
    coat: number,
    stroke: number,
  ): void {
    const after = counts.map((levels, at) => {
      if (at !== group) return levels;
      const moved = levels.slice();
      moved[coat] = (moved[coat] as number) - 1;
      moved[coat + 1] = (moved[coat + 1] as number) + 1;
      return moved;
    });
    const key = after.map((levels) => levels.join()).join(';');
    let found = next.get(key);
    if (found === undefined) {
      found = { counts: after, lastStroke: new Float64Array(kinds).fill(Number.POSITIVE_INFINITY) };
      next.set(key, found);
    }
    const at = (offsets[group] as number) + coat;
    found.lastStroke[at] = Math.min(found.lastStroke[at] as number, stroke);
  }

  /** Last stroke of a coat, when none of its strokes may come before `fromLay`, nor its visit before `fromStart`. */
  function laidFrom({ tasks, head }: TurnStep, fromLay: number, fromStart: number): number {
    let stroke = Number.POSITIVE_INFINITY;
    if (fromLay === Number.POSITIVE_INFINITY) return stroke;
    for (const task of tasks)
      for (const scuffs of [false, true]) {
        if (!mayBe(task, scuffs)) continue;
        const times = scuffs ? task.scuffedTimes : task.times;
        const from = Math.max(head, fromStart, fromLay - times.layFromMin);
        const start = nextStart(scuffs ? task.scuffedRanges : task.ranges, from, job.stepMin, null);
        if (start !== null) stroke = Math.min(stroke, start.minute + times.layToMin);
      }
    return stroke;
  }

  /** Last stroke of a coat laid straight after the coat before on the same batch, with the dry work in between. */
  function strokeAfterOwn(steps: readonly TurnStep[], before: number, index: number, stroke: number): number {
    const coat = firstOf(steps[before] as TurnStep);
    let free = stroke;
    for (let at = before + 1; at < index; at++) {
      const { tasks, head } = steps[at] as TurnStep;
      const { waits, doneFrom } = firstOf(steps[at] as TurnStep);
      if (doneFrom !== null) continue;
      let from = Math.max(head, free);
      if (waits === 'touch') from = Math.max(from, coat.touch(stroke));
      if (waits === 'handle') from = Math.max(from, coat.handle(stroke));
      free = Number.POSITIVE_INFINITY;
      for (const { ranges, times } of tasks) {
        const start = nextStart(ranges, from, job.stepMin, null);
        if (start !== null) free = Math.min(free, start.minute + times.handsOnMin);
      }
    }
    const { waits, waitsForCure, intervals } = firstOf(steps[index] as TurnStep);
    if (waitsForCure && coat.cure !== null) free = Math.max(free, coat.cure(stroke));
    if (waits === 'handle') free = Math.max(free, coat.handle(stroke));
    const opens = waits === 'recoat' ? Math.min(...intervals.map((one) => one.opens(stroke))) : stroke;
    return laidFrom(steps[index] as TurnStep, opens, free);
  }
}

function firstOf({ tasks }: TurnStep): ShopTask {
  return tasks[0] as ShopTask;
}

/** Whether a coat can come with, or without, scuffing first. */
function mayBe({ waits, intervals }: ShopTask, scuffs: boolean): boolean {
  return waits === 'recoat' ? intervals.some(({ scuffed }) => scuffed === scuffs) : !scuffs;
}

/** The batches that exclude each other, those with the same steps together. */
function turnGroups(job: ShopJob, heads: ArrayLike<number>): TurnGroup[] {
  const { tasks, chains, rackM2 } = job;
  const groups = new Map<string, TurnGroup>();
  for (const { first, last, footprintM2, readyClock } of chains) {
    if (footprintM2 <= rackM2 / 2 + AREA_DUST_M2 || readyClock === null) continue;
    const own = tasks.slice(first, last + 1);
    const coats = own.flatMap(({ isCoat, doneFrom }, at) => (isCoat && doneFrom === null ? [at] : []));
    if (coats.length === 0) continue;
    const key = own.map(({ sameAs }) => sameAs).join(' ');
    const known = groups.get(key);
    groups.set(key, {
      size: 1 + (known?.size ?? 0),
      readyClock,
      coats,
      steps: own.map((task, at): TurnStep => {
        const head = heads[first + at] as number;
        const step = known?.steps[at];
        if (step === undefined) return { tasks: [task], head };
        const isNew = step.tasks.every(
          ({ times }) => times.layToMin !== task.times.layToMin || times.handsOnMin !== task.times.handsOnMin,
        );
        return { tasks: isNew ? [...step.tasks, task] : step.tasks, head: Math.min(step.head, head) };
      }),
    });
  }
  return [...groups.values()];
}

/** In how many ways the chains of all groups can be spread over their coats. */
function statesOf(groups: readonly TurnGroup[]): number {
  let product = 1;
  for (const { size, coats } of groups) {
    let ways = 1;
    for (let at = 1; at <= size; at++) ways = (ways * (coats.length + at)) / at;
    product *= ways;
  }
  return product;
}
