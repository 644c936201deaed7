import type { CalendarInput } from './calendar-input.ts';
import type { CalendarHold } from './calendar-plan.ts';
import { AREA_DUST_M2, MINUTE_DUST } from './constants.ts';
import { ShopFloor } from './shop/shop-floor.ts';
import type { ShopJob, ShopSchedule, ShopTask } from './shop/shop-job.ts';
import { handsTo, layTo, timesIn } from './shop/shop-moments.ts';
import { nextStart } from './shop/start-ranges.ts';

/** What holds one task, by its index in the job; `other` is the index of the task that is in the way, -1 for none. */
export interface Hold {
  readonly kind: CalendarHold;
  readonly other: number;
}

/**
 * What keeps each task from starting sooner, all others staying where they are?
 *
 * @param input, job, schedule what was planned; minutes since midnight of day 0
 * @returns a hold per task; null for tasks that are history
 *
 * Source: definition: the task is taken out, and the start before its own is asked what forbids it, in the order own
 * batch, hours, air, hands, dust, rack, vapour. Where nothing does, it stands later for the sake of the next coat's
 * window, or because sooner would not make the job ready sooner. Valid range: a schedule of the job. Departures: none.
 * Example: a coat at 09:40, one pair of hands, another batch worked on from 09:10 to 09:40: hands, that task.
 */
export function heldBy(
  input: Pick<CalendarInput, 'startMinute' | 'pins'>,
  job: ShopJob,
  taskIds: readonly string[],
  { start, interval }: ShopSchedule,
): readonly (Hold | null)[] {
  const { tasks, stepMin } = job;
  const floor = new ShopFloor(job);
  for (const [index, { doneFrom }] of tasks.entries())
    if (doneFrom === null) floor.put(index, start[index] as number, interval[index] as number);
  const pinned = new Set(input.pins.map(({ taskId }) => taskId));
  return tasks.map((task, index) => {
    if (task.doneFrom !== null) return null;
    if (pinned.has(taskIds[index] as string)) return { kind: 'pin', other: -1 };
    floor.take(index);
    const hold = holdOf(task, index);
    floor.put(index, start[index] as number, interval[index] as number);
    // Putting it back does not know that the next coat on the same batch ends its time on the rack.
    const next = nextCoat(index);
    if (task.isCoat && next >= 0)
      floor.rackTo[index] = Math.min(floor.rackTo[index] as number, floor.wetFrom[next] as number);
    return hold;
  });

  function holdOf(task: ShopTask, index: number): Hold {
    const chosen = interval[index] as number;
    const begins = start[index] as number;
    const own = ownFrom(task, chosen);
    if (begins - own.minute < stepMin) return { kind: own.kind, other: own.other };
    if (floor.earliest(index, chosen, own.minute) < begins - MINUTE_DUST) {
      const next = nextCoat(index);
      const closes = next >= 0 && tasks[next]?.intervals[interval[next] as number]?.closes != null;
      return closes ? { kind: 'next-coat', other: next } : { kind: 'nothing', other: -1 };
    }
    return blockedAt(task, index, begins - stepMin);
  }

  /** From when its own batch lets it start, and what of the batch it waits for. */
  function ownFrom(task: ShopTask, chosen: number): { minute: number } & Hold {
    let from: { minute: number } & Hold = {
      minute: task.releaseMinute,
      kind: task.releaseMinute > input.startMinute ? 'material' : 'start',
      other: -1,
    };
    const later = (minute: number, kind: CalendarHold, other: number): void => {
      if (minute > from.minute) from = { minute, kind, other };
    };
    if (task.before >= 0)
      later(
        handsTo(
          tasks[task.before] as ShopTask,
          start[task.before] as number,
          interval[task.before] as number,
        ),
        'before',
        task.before,
      );
    const at = task.coatBefore;
    const coat = tasks[at];
    if (coat === undefined) return from;
    const last = layTo(coat, start[at] as number, interval[at] as number);
    if (task.waits === 'touch') later(coat.touch(last), 'drying', at);
    if (task.waits === 'handle') later(coat.handle(last), 'drying', at);
    if (task.waitsForCure && coat.cure !== null) later(coat.cure(last), 'drying', at);
    const window = task.intervals[chosen];
    if (window !== undefined) {
      const sets = window.scuffed ? 0 : timesIn(task, chosen).layFromMin;
      later(window.opens(last) - sets, 'drying', at);
      if (window.scuffed) later(coat.touch(last), 'drying', at);
    }
    const goal = tasks.find(({ sandingBetween }) => sandingBetween >= 0 && tasks[sandingBetween] === task);
    if (goal !== undefined)
      later(goal.intervals[interval[tasks.indexOf(goal)] as number]?.opens(last) ?? 0, 'drying', at);
    return from;
  }

  /** What forbids a start at a minute. */
  function blockedAt(task: ShopTask, index: number, minute: number): Hold {
    const times = timesIn(task, interval[index] as number);
    const ranges = times === task.times ? task.ranges : task.scuffedRanges;
    const end = minute + times.handsOnMin;
    const isOpen = job.windows.some(({ fromMinute, toMinute }) => fromMinute <= minute && end <= toMinute);
    if (!isOpen) return { kind: 'hours', other: -1 };
    if (nextStart(ranges, minute, stepMin, null)?.minute !== minute) return { kind: 'air', other: -1 };
    const lays = minute + times.layFromMin;
    const rivals = tasks.map((_, other) => other).filter((other) => other !== index);
    const latest = (found: readonly number[], to: Float64Array): number =>
      found.reduce(
        (best, other) => (best < 0 || (to[other] as number) > (to[best] as number) ? other : best),
        -1,
      );

    const busy = rivals.filter(
      (other) => (floor.handsFrom[other] as number) < end && (floor.handsTo[other] as number) > minute,
    );
    if (busy.length >= job.hands) return { kind: 'hands', other: latest(busy, floor.handsTo) };
    if (!job.sandsApart && times.sandToMin > 0) {
      const wet = rivals.filter(
        (other) =>
          tasks[other]?.isCoat &&
          (floor.wetFrom[other] as number) < minute + times.sandToMin &&
          (floor.wetTo[other] as number) - MINUTE_DUST > minute,
      );
      if (wet.length > 0) return { kind: 'dust', other: latest(wet, floor.wetTo) };
    }
    if (!job.sandsApart && task.isCoat) {
      const dries = task.touch(minute + times.layToMin);
      const sanding = rivals.filter(
        (other) =>
          (floor.sandFrom[other] as number) < (floor.sandTo[other] as number) &&
          (floor.sandFrom[other] as number) < dries &&
          (floor.sandTo[other] as number) > lays,
      );
      if (sanding.length > 0) return { kind: 'dust', other: latest(sanding, floor.sandTo) };
    }
    if (task.isCoat) {
      const leaves = task.handle(minute + times.layToMin);
      const lying = rivals.filter(
        (other) =>
          tasks[other]?.isCoat &&
          tasks[other]?.chain !== task.chain &&
          (floor.wetFrom[other] as number) < leaves &&
          (floor.rackTo[other] as number) - MINUTE_DUST > lays,
      );
      const area = (other: number): number => job.chains[tasks[other]?.chain ?? 0]?.footprintM2 ?? 0;
      const taken = lying.reduce((sum, other) => sum + area(other), area(index));
      if (taken > job.rackM2 + AREA_DUST_M2) return { kind: 'rack', other: latest(lying, floor.rackTo) };
      const near = rivals.filter(
        (other) =>
          task.hasVapour &&
          tasks[other]?.hasVapour &&
          Math.abs((floor.wetFrom[other] as number) - lays) < job.apartMin,
      );
      if (near.length > 0) return { kind: 'vapour', other: latest(near, floor.wetFrom) };
    }
    return { kind: 'nothing', other: -1 };
  }

  function nextCoat(index: number): number {
    for (let at = index + 1; at < tasks.length && tasks[at]?.chain === tasks[index]?.chain; at++)
      if (tasks[at]?.isCoat) return at;
    return -1;
  }
}
