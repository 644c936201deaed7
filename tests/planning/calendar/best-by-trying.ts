import type {
  CalendarBatch,
  CalendarTask,
  TaskTimes,
} from '../../../server/planning/calendar/calendar-batch.ts';
import type { CalendarInput, CoatFacts } from '../../../server/planning/calendar/calendar-input.ts';
import { climateAt } from '../../../server/planning/climate/climate-at.ts';
import { dryingProgress } from '../../../server/planning/climate/drying-progress.ts';
import { mayApply } from '../../../server/planning/climate/may-apply.ts';

const DAY = 1440;
const DUST = 1e-4;
/** More minutes than any calendar here has, and a power of two, so that fractions keep their place in a joint key. */
const FAR = 2 ** 20;

interface Placed {
  readonly task: CalendarTask;
  readonly batch: CalendarBatch;
  readonly times: TaskTimes;
  readonly start: number;
}

/** Slow twin: tries every start on the grid for every task and keeps the best by ready minute, then visits. */
export function bestByTrying(
  input: CalendarInput,
  batches: readonly CalendarBatch[],
): { readonly readyMinute: number; readonly visits: number } | null {
  const order = batches.flatMap((batch) => batch.tasks.map((task) => ({ batch, task })));
  const starts: number[] = [];
  for (let minute = 0; minute < input.horizonDays * DAY; minute += input.stepMin)
    if (minute >= input.startMinute && windowOf(minute) !== null) starts.push(minute);
  const allowed = new Map<TaskTimes, readonly number[]>();
  const placed: Placed[] = [];
  const progress = new Map<CoatFacts, Map<number, number>>();
  const driedAt = new Map<CoatFacts, Map<number, number>>();
  let best: { readyMinute: number; visits: number } | null = null;
  visit(0);
  return best;

  function visit(index: number): void {
    const next = order[index];
    if (next === undefined) {
      const readyMinute = Math.max(...batches.map(readyOf));
      const visits = new Set(placed.map(({ start }) => windowOf(start))).size;
      const better =
        best === null ||
        readyMinute < best.readyMinute - DUST ||
        (readyMinute < best.readyMinute + DUST && visits < best.visits);
      if (better && rackHolds()) best = { readyMinute, visits };
      return;
    }
    const { task, batch } = next;
    const variants = task.coat === null ? [task.times] : [task.times, task.scuffedTimes];
    for (const times of variants)
      for (const start of startsOf(task, times)) {
        const one = { task, batch, times, start };
        if (best !== null && start + times.handsOnMin > best.readyMinute + DUST) break;
        if (!fits(one, times === task.scuffedTimes && task.coat !== null)) continue;
        placed.push(one);
        visit(index + 1);
        placed.pop();
      }
  }

  function startsOf(task: CalendarTask, times: TaskTimes): readonly number[] {
    const known = allowed.get(times);
    if (known !== undefined) return known;
    const list = starts.filter((start) => {
      for (let minute = start; minute < start + times.handsOnMin; minute += 5)
        if (windowOf(minute) === null || windowOf(minute) !== windowOf(start)) return false;
      if (task.coat === null) return true;
      for (let minute = start + times.layFromMin; minute < start + times.layToMin; minute++) {
        const air = climateAt(input.climate, minute);
        if (mayApply(air, air.airC + input.woodWarmerC, task.coat.facts).length > 0) return false;
      }
      return true;
    });
    allowed.set(times, list);
    return list;
  }

  function fits(one: Placed, scuffs: boolean): boolean {
    const { task, batch, start, times } = one;
    if (start < task.releaseMinute) return false;
    const own = placed.filter((other) => other.batch === batch);
    const before = own.at(-1);
    if (before !== undefined && start < before.start + before.times.handsOnMin) return false;
    const coat = own.findLast((other) => other.task.coat !== null);
    if (coat !== undefined && !follows(one, coat, own, scuffs)) return false;
    if (coat === undefined && scuffs) return false;
    const end = start + times.handsOnMin;
    const rivals = placed.filter(
      (other) => other.start < end && start < other.start + other.times.handsOnMin,
    );
    const moments = [start, ...rivals.map((other) => other.start)].filter((minute) => minute >= start);
    for (const moment of moments) {
      const busy = rivals.filter(
        (other) => other.start <= moment && moment < other.start + other.times.handsOnMin,
      );
      if (busy.length + 1 > input.hands) return false;
    }
    return input.sandsApart || placed.every((other) => clean(one, other) && clean(other, one));
  }

  function follows(one: Placed, coat: Placed, own: readonly Placed[], scuffs: boolean): boolean {
    const laid = coat.task.coat;
    if (laid === null) return false;
    const { task, start, times } = one;
    if (task.waitsForCure && laid.facts.cureMin !== null && dry(coat, start) < laid.facts.cureMin - DUST)
      return false;
    if (task.face !== coat.task.face) return !scuffs && dry(coat, start) >= laid.handleDryMin - DUST;
    if (task.coat === null) {
      const later = one.batch.tasks.slice(one.batch.tasks.indexOf(task) + 1);
      const goal = later.some((other) => other.coat !== null && other.face === task.face);
      return dry(coat, start) >= (goal ? laid.touchDryMin : laid.handleDryMin) - DUST;
    }
    const stroke = start + times.layFromMin;
    const sanding = own
      .slice(own.indexOf(coat) + 1)
      .find((other) => other.task.kind === 'sand' || other.task.kind === 'scuff');
    return laid.recoat.some(({ fromMin, toMin, scuff }) => {
      if (scuffs !== (scuff && sanding === undefined)) return false;
      if (dry(coat, stroke) < fromMin - DUST) return false;
      if (toMin !== null && since(coat, coat.start + coat.times.layFromMin, stroke) > toMin + DUST)
        return false;
      if (sanding !== undefined) return dry(coat, sanding.start) >= fromMin - DUST;
      return !scuffs || dry(coat, start) >= Math.max(fromMin, laid.touchDryMin) - DUST;
    });
  }

  /** Nothing is sanded in `one` while the coat of `other` is wet. */
  function clean(one: Placed, other: Placed): boolean {
    if (one.times.sandToMin === 0 || other.task.coat === null) return true;
    if (other.start + other.times.layFromMin >= one.start + one.times.sandToMin) return true;
    return dry(other, one.start) >= other.task.coat.touchDryMin - DUST;
  }

  function rackHolds(): boolean {
    const rackM2 = input.rackM2;
    if (rackM2 === null) return true;
    const coats = placed.filter(({ task }) => task.coat !== null);
    return coats.every((one) => {
      const moment = one.start + one.times.layFromMin;
      let taken = 0;
      for (const batch of batches) {
        const laid = coats.findLast(
          (other) => other.batch === batch && other.start + other.times.layFromMin <= moment,
        );
        if (laid !== undefined && dry(laid, moment) < (laid.task.coat?.handleDryMin ?? 0) - DUST)
          taken += batch.footprintM2;
      }
      return taken <= rackM2 + DUST;
    });
  }

  function readyOf(batch: CalendarBatch): number {
    const own = placed.filter((other) => other.batch === batch);
    const last = own.at(-1);
    const coat = own.findLast((other) => other.task.coat !== null);
    const end = last === undefined ? 0 : last.start + last.times.handsOnMin;
    const laid = coat?.task.coat;
    if (coat === undefined || !laid) return end;
    const label = (batch.curesAtEnd ? laid.facts.cureMin : null) ?? laid.handleDryMin;
    return Math.max(end, dryAt(coat, laid.facts, label));
  }

  /** The minute at which the label time is reached, by halving. */
  function dryAt(coat: Placed, facts: CoatFacts, label: number): number {
    const ofCoat = driedAt.get(facts) ?? new Map<number, number>();
    driedAt.set(facts, ofCoat);
    const laidTo = coat.start + coat.times.layToMin;
    const key = label * FAR + laidTo;
    const known = ofCoat.get(key);
    if (known !== undefined) return known;
    const reached = (minute: number): boolean =>
      dryingProgress(laidTo, minute, input.climate, facts, input.dryingRule) >= label;
    let low = laidTo;
    let high = laidTo + Math.max(1, label);
    while (!reached(high) && high < laidTo + 60 * DAY) high += Math.max(1, label);
    while (high - low > DUST / 10) {
      const middle = (low + high) / 2;
      if (reached(middle)) high = middle;
      else low = middle;
    }
    ofCoat.set(key, high);
    return high;
  }

  function dry(coat: Placed, minute: number): number {
    return since(coat, coat.start + coat.times.layToMin, minute);
  }

  function since(coat: Placed, from: number, minute: number): number {
    if (minute < from) return -1;
    const facts = coat.task.coat?.facts;
    if (facts === undefined) return -1;
    const ofCoat = progress.get(facts) ?? new Map<number, number>();
    progress.set(facts, ofCoat);
    const key = from * FAR + minute;
    const known = ofCoat.get(key) ?? dryingProgress(from, minute, input.climate, facts, input.dryingRule);
    ofCoat.set(key, known);
    return known;
  }

  function windowOf(minute: number): string | null {
    let clock = minute;
    for (const { fromMinute, aheadMin } of input.clockShifts)
      if (fromMinute <= minute) clock = minute + aheadMin;
    const day = Math.floor(clock / DAY);
    if (day >= input.horizonDays || input.daysOff.includes(day)) return null;
    const windows = input.hours[(input.firstWeekday + day) % 7] ?? [];
    const found = windows.findIndex(
      ({ fromMin, toMin }) => clock - day * DAY >= fromMin && clock - day * DAY < toMin,
    );
    return found < 0 ? null : `${day} ${found}`;
  }
}
