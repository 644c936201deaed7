import type { ShopFloor } from './shop-floor.ts';
import type { ShopChain, ShopInterval, ShopTask } from './shop-job.ts';
import { layFrom, timesIn } from './shop-moments.ts';

/** What the search varies: which task goes first, and where a coat is to follow in an interval that closes. */
export interface SerialChoices {
  /** Per task: lower goes first. */
  readonly keys: Float64Array;
  /** True: keys are minutes added to when the task could start by its own chain, and the lowest sum goes first. */
  readonly byTime: boolean;
  /** Per coat: the interval to start in, though it closes; -1 takes the first that comes. */
  readonly wanted: Int32Array;
}

/** Starts tried for a coat whose next coat must follow in time. */
const MOST_TRIES = 40;

/**
 * Places every task on the floor, one after the other, each as early as it fits.
 *
 * @param floor see shop-floor.ts; emptied first
 * @param choices see SerialChoices
 * @returns false when something did not fit: the floor then holds a part of a schedule. True: a whole one that keeps
 *   every rule.
 *
 * Source: serial schedule generation in calendar time (R. Kolisch, European Journal of Operational Research 90, 1996).
 * A coat whose next coat must follow before an interval closes is placed together with it; if that fails it moves on to
 * the first start from which the interval would stay open long enough. Valid range: any job. Departures: none.
 */
export function serialShop(floor: ShopFloor, { keys, wanted, byTime }: SerialChoices): boolean {
  const { tasks, chains } = floor.job;
  floor.clear();
  const next = new Int32Array(chains.length);
  const nextKey = new Float64Array(chains.length);
  for (let chain = 0; chain < chains.length; chain++) {
    next[chain] = (chains[chain] as ShopChain).first;
    advance(chain);
  }
  for (;;) {
    let chosen = -1;
    let lowest = Number.POSITIVE_INFINITY;
    for (let chain = 0; chain < nextKey.length; chain++) {
      const key = nextKey[chain] as number;
      if (Number.isNaN(key) || (chosen >= 0 && key >= lowest)) continue;
      chosen = chain;
      lowest = key;
    }
    if (chosen < 0) return true;
    if (!placeNext(next[chosen] as number)) return false;
    advance(chosen);
  }

  /** On to the next task of a chain that is not placed; its key is NaN when there is none. */
  function advance(chain: number): void {
    const { last } = chains[chain] as ShopChain;
    let at = next[chain] as number;
    while (at <= last && floor.placed[at] === 1) at++;
    next[chain] = at;
    nextKey[chain] = at > last ? Number.NaN : (keys[at] as number) + (byTime ? releasedAt(at, 0) : 0);
  }

  /** One task, and whatever must follow it in time. */
  function placeNext(index: number): boolean {
    const task = tasks[index] as ShopTask;
    if (task.waits !== 'recoat') return placeCoat(index, -1, Number.POSITIVE_INFINITY) === PLACED;
    const open: { interval: number; start: number; deadline: number }[] = [];
    for (const [interval, { closes }] of task.intervals.entries()) {
      if (!sandedIn(task, interval)) continue;
      const start = floor.earliest(index, interval, releasedAt(index, interval));
      const deadline = closes === null ? Number.POSITIVE_INFINITY : closes(firstStroke(task.coatBefore));
      if (start < Number.POSITIVE_INFINITY && layFrom(task, start, interval) <= deadline)
        open.push({ interval, start, deadline });
    }
    open.sort((left, right) => left.start - right.start || left.interval - right.interval);
    for (const { interval, deadline } of open)
      if (placeCoat(index, interval, deadline) === PLACED) return true;

    // The sanding came too early for any interval that is still open: sand again later.
    for (let at = task.coatBefore + 1; at < index; at++) if (tasks[at]?.doneFrom === null) floor.take(at);
    for (let interval = 0; interval < task.intervals.length; interval++)
      if (placeGap(task.coatBefore, index, interval) === PLACED) return true;
    return false;
  }

  /**
   * Places a task in an interval, no first stroke after `deadline`, with the coat that must follow it in time. Answers
   * PLACED, or the earliest first stroke there would have been.
   */
  function placeCoat(index: number, interval: number, deadline: number): number {
    const task = tasks[index] as ShopTask;
    const follower = tightFollower(index);
    let late = Number.POSITIVE_INFINITY;
    for (const choices of follower < 0 ? [[]] : choicesOf(follower)) {
      let from = releasedAt(index, interval);
      for (let tries = 0; tries < MOST_TRIES && from < Number.POSITIVE_INFINITY; tries++) {
        const start = floor.earliest(index, interval, from);
        const stroke = start + timesIn(task, interval).layFromMin;
        if (stroke > deadline || start === Number.POSITIVE_INFINITY) {
          late = Math.min(late, stroke);
          break;
        }
        floor.put(index, start, interval);
        if (follower < 0) return PLACED;
        from = Number.POSITIVE_INFINITY;
        for (const choice of choices) {
          const needed = placeGap(index, follower, choice);
          if (needed === PLACED) return PLACED;
          from = Math.min(from, startToReach(index, interval, follower, choice, needed));
        }
        floor.take(index);
      }
    }
    return late;
  }

  /** Places the work between two coats and the later coat, all in one interval of the earlier. */
  function placeGap(earlier: number, later: number, interval: number): number {
    const { closes } = (tasks[later] as ShopTask).intervals[interval] as ShopInterval;
    const deadline = closes === null ? Number.POSITIVE_INFINITY : closes(firstStroke(earlier));
    let late = PLACED;
    let at = earlier + 1;
    for (; at < later; at++) {
      if (floor.placed[at] === 1) continue;
      const start = floor.earliest(at, -1, releasedAt(at, -1, later, interval));
      if (start > deadline || start === Number.POSITIVE_INFINITY) {
        late = start;
        break;
      }
      floor.put(at, start, -1);
    }
    if (late === PLACED)
      late = sandedIn(tasks[later] as ShopTask, interval)
        ? placeCoat(later, interval, deadline)
        : Number.POSITIVE_INFINITY;
    if (late !== PLACED)
      for (let back = earlier + 1; back < at; back++) if (tasks[back]?.doneFrom === null) floor.take(back);
    return late;
  }

  /** The coat that must be placed together with this one; -1 when the next may come whenever it does. */
  function tightFollower(index: number): number {
    if (tasks[index]?.isCoat !== true) return -1;
    for (let at = index + 1; at < tasks.length && tasks[at]?.coatBefore === index; at++) {
      const task = tasks[at] as ShopTask;
      if (task.waits !== 'recoat') continue;
      if (task.doneFrom !== null) return -1;
      const ends = task.intervals.every(({ closes }) => closes !== null);
      return ends || (wanted[at] as number) >= 0 ? at : -1;
    }
    return -1;
  }

  /** Lists of intervals to try, one list after the other: the wanted one alone first. */
  function choicesOf(index: number): readonly (readonly number[])[] {
    const choice = wanted[index] as number;
    const all = [...(tasks[index] as ShopTask).intervals.keys()];
    return choice >= 0 && choice < all.length ? [[choice], all] : [all];
  }

  /** First start of the earlier coat from which the interval would still be open at `stroke`. */
  function startToReach(
    index: number,
    interval: number,
    later: number,
    choice: number,
    stroke: number,
  ): number {
    const { closes } = (tasks[later] as ShopTask).intervals[choice] as ShopInterval;
    const now = floor.start[index] as number;
    const { stepMin } = floor.job;
    if (stroke === Number.POSITIVE_INFINITY || closes === null) return Number.POSITIVE_INFINITY;
    const offset = timesIn(tasks[index] as ShopTask, interval).layFromMin;
    let low = 1;
    let high = Math.max(1, Math.ceil((stroke - now) / stepMin));
    while (low < high) {
      const middle = (low + high) >> 1;
      if (closes(now + middle * stepMin + offset) >= stroke) high = middle;
      else low = middle + 1;
    }
    return now + low * stepMin;
  }

  function firstStroke(index: number): number {
    return floor.wetFrom[index] as number;
  }

  function sandedIn(task: ShopTask, interval: number): boolean {
    if (task.sandingBetween < 0) return true;
    const { opens } = task.intervals[interval] as ShopInterval;
    const sanding = task.sandingBetween;
    if (tasks[sanding]?.doneFrom !== null) return true;
    return (floor.start[sanding] as number) >= opens(lastStroke(task.coatBefore));
  }

  function lastStroke(index: number): number {
    const task = tasks[index] as ShopTask;
    return (
      task.doneTo ?? (floor.start[index] as number) + timesIn(task, floor.interval[index] as number).layToMin
    );
  }

  /** Earliest start by the chain alone. `gapTo` and `gapInterval`: the coat and interval that work in between aims at. */
  function releasedAt(index: number, interval: number, gapTo = -1, gapInterval = -1): number {
    const task = tasks[index] as ShopTask;
    let from = task.releaseMinute;
    if (task.before >= 0) from = Math.max(from, floor.handsTo[task.before] as number);
    const coat = tasks[task.coatBefore];
    if (coat === undefined) return from;
    const stroke = lastStroke(task.coatBefore);
    if (task.waits === 'touch') from = Math.max(from, coat.touch(stroke));
    if (task.waits === 'handle') from = Math.max(from, coat.handle(stroke));
    if (task.waitsForCure && coat.cure !== null) from = Math.max(from, coat.cure(stroke));
    const own = task.intervals[interval];
    if (own !== undefined) {
      const times = timesIn(task, interval);
      if (own.scuffed) from = Math.max(from, own.opens(stroke), coat.touch(stroke));
      else from = Math.max(from, own.opens(stroke) - times.layFromMin);
    }
    const goal = tasks[gapTo];
    const sands =
      goal === undefined ? nextSandingGap(index) : goal.sandingBetween === index ? goal : undefined;
    const first = sands?.intervals[Math.max(gapInterval, 0)];
    if (first !== undefined) from = Math.max(from, first.opens(stroke));
    return from;
  }

  /** The coat that this sanding prepares, if it does. */
  function nextSandingGap(index: number): ShopTask | undefined {
    for (let at = index + 1; at < tasks.length && tasks[at]?.coatBefore === tasks[index]?.coatBefore; at++)
      if (tasks[at]?.sandingBetween === index) return tasks[at];
    return undefined;
  }
}

const PLACED = -1;
