import { MINUTE_DUST } from '../constants.ts';
import type { DryingClock } from './drying-clock.ts';
import type { ShopInterval, ShopJob, ShopTask } from './shop-job.ts';
import { chainReady, handsTo, layFrom, layTo } from './shop-moments.ts';
import { nextStart } from './start-ranges.ts';

/** One decision between chains: what of `first` must be over before what of `second` begins. */
export interface ShopOrder {
  /**
   * hands: the visits. rack: drying on the rack. wet: wet before sanding. sand: sanding before wet. air: first strokes far
   * enough apart.
   */
  readonly kind: 'hands' | 'rack' | 'wet' | 'sand' | 'air';
  readonly first: number;
  readonly second: number;
}

/** A part of the search tree: starts no earlier than these, in these intervals, with these orders. */
export interface ShopNode {
  readonly start: Float64Array;
  /** Interval decided on per coat; -1 while open. */
  readonly interval: Int32Array;
  readonly orders: readonly ShopOrder[];
}

/**
 * How late must every task start at least, in a part of the tree?
 *
 * @param job see shop-job.ts; minutes since midnight of day 0
 * @param node its starts are raised in place to the least that fulfil all its constraints at once
 * @param readyBefore a chain that cannot be ready before this minute ends the part
 * @param closed working windows not to be used
 * @returns false when the part holds no schedule that is ready in time
 *
 * Source: every constraint here says "not before f(start of another)" with f rising, and hours and air only forbid
 * minutes; constraints of this form have a least solution, reached by raising starts until all hold (M. Dechter, I. Meiri,
 * J. Pearl, Artificial Intelligence 49, 1991, for constant lags). A closing interval is read backwards: the earlier coat
 * not before the first start from which the interval is still open. Valid range: any job. Departures: while an interval
 * is open the loosest of all counts. Example: coat of 30 minutes at 480, dry after 60: the next not before 570.
 */
export function settleShop(
  job: ShopJob,
  { start, interval, orders }: ShopNode,
  readyBefore: number,
  closed: ReadonlySet<number> | null,
): boolean {
  const { tasks, chains, stepMin } = job;
  let changed = true;
  while (changed) {
    changed = false;
    for (let index = 0; index < tasks.length; index++) {
      const task = tasks[index] as ShopTask;
      if (task.doneFrom !== null) continue;
      const own = start[index] as number;
      let from = Math.max(own, task.releaseMinute);
      if (task.before >= 0) from = Math.max(from, handsToOf(task.before));
      const coat = tasks[task.coatBefore];
      if (coat !== undefined) from = Math.max(from, afterCoat(index, task, coat));
      if (!raise(index, from)) return false;
      if (task.waits === 'recoat' && coat !== undefined && !keepOpen(task, index, coat)) return false;
    }
    for (const order of orders) if (!keepOrder(order)) return false;
    for (let chain = 0; chain < chains.length; chain++) {
      const { twin, first } = chains[chain] as ShopJob['chains'][number];
      if (twin >= 0 && !raise(first, start[chains[twin]?.first ?? first] as number)) return false;
      if (chainReady(job, chain, start, interval) >= readyBefore) return false;
    }
  }
  return true;

  /** Raises a start to the first allowed one from a minute. False when there is none, or when history forbids it. */
  function raise(index: number, from: number): boolean {
    const task = tasks[index] as ShopTask;
    if (task.doneFrom !== null) return from <= task.doneFrom;
    const decided = interval[index] as number;
    const open = decided < 0 && task.intervals.some(({ scuffed }) => scuffed);
    const plain = task.intervals[decided]?.scuffed !== true;
    let least = Number.POSITIVE_INFINITY;
    if (plain) least = nextStart(task.ranges, from, stepMin, closed)?.minute ?? least;
    if (!plain || open)
      least = Math.min(least, nextStart(task.scuffedRanges, from, stepMin, closed)?.minute ?? least);
    if (least === Number.POSITIVE_INFINITY) return false;
    if (least > (start[index] as number)) {
      start[index] = least;
      changed = true;
    }
    return true;
  }

  function afterCoat(index: number, task: ShopTask, coat: ShopTask): number {
    const stroke = layToOf(task.coatBefore);
    let from = 0;
    if (task.waits === 'touch') from = coat.touch(stroke);
    if (task.waits === 'handle') from = coat.handle(stroke);
    if (task.waitsForCure && coat.cure !== null) from = Math.max(from, coat.cure(stroke));
    if (task.waits === 'recoat') {
      const decided = task.intervals[interval[index] as number];
      let least = Number.POSITIVE_INFINITY;
      for (const one of decided === undefined ? task.intervals : [decided]) {
        const opens = one.opens(stroke);
        least = Math.min(
          least,
          one.scuffed ? Math.max(opens, coat.touch(stroke)) : opens - task.times.layFromMin,
        );
      }
      from = Math.max(from, least);
    }
    const goal = sandsFor(index);
    if (goal >= 0) {
      const { intervals } = tasks[goal] as ShopTask;
      const one = intervals[Math.max(interval[goal] as number, 0)] as ShopInterval;
      from = Math.max(from, one.opens(stroke));
    }
    return from;
  }

  /** The coat whose gap this sanding belongs to; -1 for none. */
  function sandsFor(index: number): number {
    const { coatBefore } = tasks[index] as ShopTask;
    for (let at = index + 1; at < tasks.length && tasks[at]?.coatBefore === coatBefore; at++)
      if (tasks[at]?.sandingBetween === index) return at;
    return -1;
  }

  /** Raises the earlier coat so far that the interval is still open at this one's first stroke. */
  function keepOpen(task: ShopTask, index: number, coat: ShopTask): boolean {
    const decided = task.intervals[interval[index] as number];
    const candidates = decided === undefined ? task.intervals : [decided];
    if (candidates.some(({ closes }) => closes === null)) return true;
    const stroke = layFromOf(index);
    const first = layFromOf(task.coatBefore);
    const closes: DryingClock = (minute) =>
      Math.max(...candidates.map((one) => one.closes?.(minute) ?? minute));
    if (closes(first) >= stroke - MINUTE_DUST) return true;
    if (coat.doneFrom !== null) return false;
    // Whole minutes, not steps: a pinned coat may start between two steps.
    let low = 1;
    let high = Math.max(1, Math.ceil(stroke - first));
    while (low < high) {
      const middle = (low + high) >> 1;
      if (closes(first + middle) >= stroke - MINUTE_DUST) high = middle;
      else low = middle + 1;
    }
    return raise(task.coatBefore, (start[task.coatBefore] as number) + low);
  }

  function keepOrder({ kind, first, second }: ShopOrder): boolean {
    const before = tasks[first] as ShopTask;
    const after = tasks[second] as ShopTask;
    const lays = layFromOf(second) - (start[second] as number);
    if (kind === 'hands') return raise(second, handsToOf(first));
    if (kind === 'air')
      return raise(second, layFromOf(first) + job.apartMin - (after.doneFrom === null ? lays : 0));
    if (kind === 'wet') return raise(second, before.touch(layToOf(first)));
    if (kind === 'sand') return raise(second, sandToOf(first) - lays);
    let free = before.handle(layToOf(first));
    const next = nextCoat(first);
    if (next >= 0) free = Math.min(free, layFromOf(next));
    return raise(second, free - (after.doneFrom === null ? lays : 0));
  }

  function nextCoat(index: number): number {
    for (let at = index + 1; at < tasks.length && tasks[at]?.coatBefore === index; at++)
      if (tasks[at]?.isCoat) return at;
    return -1;
  }

  function layFromOf(index: number): number {
    return layFrom(tasks[index] as ShopTask, start[index] as number, interval[index] as number);
  }
  function layToOf(index: number): number {
    return layTo(tasks[index] as ShopTask, start[index] as number, interval[index] as number);
  }
  function handsToOf(index: number): number {
    return handsTo(tasks[index] as ShopTask, start[index] as number, interval[index] as number);
  }
  function sandToOf(index: number): number {
    const task = tasks[index] as ShopTask;
    const times = task.intervals[interval[index] as number]?.scuffed ? task.scuffedTimes : task.times;
    return task.doneTo ?? (start[index] as number) + times.sandToMin;
  }
}
