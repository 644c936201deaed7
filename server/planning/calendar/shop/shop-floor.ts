import { MINUTES_PER_DAY } from '../../climate/constants.ts';
import { AREA_DUST_M2, MINUTE_DUST } from '../constants.ts';
import { DayLists } from './day-lists.ts';
import type { ShopJob, ShopTask } from './shop-job.ts';
import { timesIn } from './shop-moments.ts';
import { nextStart } from './start-ranges.ts';

/**
 * What the shop holds while a schedule is being built: which tasks are placed, and from when to when each keeps hands,
 * makes dust, is wet and lies on the rack. Minutes since midnight of day 0. Tasks done already are always placed.
 *
 * Source: the rules in shop-job-of.ts. `closed` are working windows that may not be used.
 */
export class ShopFloor {
  readonly start: Float64Array;
  readonly interval: Int32Array;
  readonly placed: Uint8Array;
  readonly handsFrom: Float64Array;
  readonly handsTo: Float64Array;
  readonly sandFrom: Float64Array;
  readonly sandTo: Float64Array;
  readonly wetFrom: Float64Array;
  readonly wetTo: Float64Array;
  readonly rackTo: Float64Array;
  readonly job: ShopJob;
  closed: ReadonlySet<number> | null = null;
  readonly #rivals: number[] = [];
  readonly #wetRivals: number[] = [];
  /** Visits by the days they touch, and coats by the days on which they are wet or on the rack. */
  readonly #visits: DayLists;
  readonly #coats: DayLists;
  readonly #coatTo: Float64Array;

  constructor(job: ShopJob) {
    const count = job.tasks.length;
    this.job = job;
    this.start = new Float64Array(count);
    this.interval = new Int32Array(count).fill(-1);
    this.placed = new Uint8Array(count);
    this.handsFrom = new Float64Array(count);
    this.handsTo = new Float64Array(count);
    this.sandFrom = new Float64Array(count);
    this.sandTo = new Float64Array(count);
    this.wetFrom = new Float64Array(count);
    this.wetTo = new Float64Array(count);
    this.rackTo = new Float64Array(count);
    this.#coatTo = new Float64Array(count);
    const days = Math.ceil(job.endMinute / MINUTES_PER_DAY) + 1;
    this.#visits = new DayLists(days);
    this.#coats = new DayLists(days);
    this.clear();
  }

  clear(): void {
    this.placed.fill(0);
    this.#visits.clear();
    this.#coats.clear();
    for (const [index, task] of this.job.tasks.entries())
      if (task.doneFrom !== null) this.put(index, task.doneFrom, -1);
  }

  put(index: number, start: number, interval: number): void {
    const task = this.job.tasks[index] as ShopTask;
    const times = timesIn(task, interval);
    this.start[index] = start;
    this.interval[index] = interval;
    this.placed[index] = 1;
    this.handsFrom[index] = start;
    this.handsTo[index] = task.doneTo ?? start + times.handsOnMin;
    this.sandFrom[index] = start;
    this.sandTo[index] = times.sandToMin === 0 ? start : (task.doneTo ?? start + times.sandToMin);
    this.#visits.add(index, start, this.handsTo[index] as number);
    if (!task.isCoat) return;
    const from = task.doneFrom ?? start + times.layFromMin;
    const to = task.doneTo ?? start + times.layToMin;
    this.wetFrom[index] = from;
    this.wetTo[index] = task.touch(to);
    this.rackTo[index] = task.handle(to);
    this.#coatTo[index] = Math.max(this.wetTo[index] as number, this.rackTo[index] as number);
    this.#coats.add(index, from, this.#coatTo[index] as number);
    const earlier = task.coatBefore;
    if (earlier >= 0 && (this.rackTo[earlier] as number) > from) this.rackTo[earlier] = from;
  }

  take(index: number): void {
    this.placed[index] = 0;
    const task = this.job.tasks[index] as ShopTask;
    this.#visits.remove(index, this.start[index] as number, this.handsTo[index] as number);
    if (task.isCoat) this.#coats.remove(index, this.wetFrom[index] as number, this.#coatTo[index] as number);
    const earlier = this.job.tasks[task.coatBefore];
    if (!task.isCoat || earlier === undefined) return;
    const at = task.coatBefore;
    const to =
      earlier.doneTo ?? (this.start[at] as number) + timesIn(earlier, this.interval[at] as number).layToMin;
    this.rackTo[at] = earlier.handle(to);
  }

  /**
   * First start from `notBefore` that hours, air, hands, dust and rack allow with what is placed; Infinity for none.
   * Lags inside the chain are the caller's.
   */
  earliest(index: number, interval: number, notBefore: number): number {
    const { tasks, stepMin } = this.job;
    const task = tasks[index] as ShopTask;
    const times = timesIn(task, interval);
    const ranges = times === task.times ? task.ranges : task.scuffedRanges;
    let from = notBefore;
    for (;;) {
      const found = nextStart(ranges, from, stepMin, this.closed);
      if (found === null) return Number.POSITIVE_INFINITY;
      const start = found.minute;
      let later = this.#handsFree(start, start + times.handsOnMin);
      if (later <= start && !this.job.sandsApart)
        later = this.#dustFree(index, start, times.sandToMin, times.layFromMin, times.layToMin);
      if (later <= start && task.isCoat && this.job.rackM2 < Number.POSITIVE_INFINITY)
        later =
          this.#rackFree(index, start + times.layFromMin, task.handle(start + times.layToMin)) -
          times.layFromMin;
      if (later <= start && task.hasVapour)
        later = this.#airClear(index, start + times.layFromMin) - times.layFromMin;
      if (later <= start) return start;
      if (later === Number.POSITIVE_INFINITY) return later;
      from = later;
    }
  }

  /** Visits, or coats, that may touch the time from `from` to `to`; each once. Overwritten by the next call. */
  #near(lists: DayLists, begins: Float64Array, from: number, to: number): readonly number[] {
    const near = this.#rivals;
    near.length = 0;
    const first = lists.day(from);
    const last = lists.day(to);
    for (let day = first; day <= last; day++)
      for (const item of lists.of(day))
        if (Math.max(lists.day(begins[item] as number), first) === day) near.push(item);
    return near;
  }

  /** `from` itself when hands are free throughout, else a minute from which they may be. */
  #handsFree(from: number, to: number): number {
    const { hands } = this.job;
    const { handsFrom, handsTo } = this;
    if (hands === 1) return this.#oneIsFree(from, to - from);
    const near = this.#near(this.#visits, handsFrom, from, to);
    let later = from;
    for (const other of near) {
      const moment = Math.max(handsFrom[other] as number, from);
      if (moment >= to || (handsTo[other] as number) <= moment) continue;
      let busy = 0;
      let free = Number.POSITIVE_INFINITY;
      for (const also of near) {
        if ((handsFrom[also] as number) > moment || (handsTo[also] as number) <= moment) continue;
        busy++;
        free = Math.min(free, handsTo[also] as number);
      }
      if (busy >= hands) later = Math.max(later, free);
    }
    return later;
  }

  /** The same for one pair of hands, which is asked most: past one visit after the other until a gap is long enough. */
  #oneIsFree(from: number, minutes: number): number {
    const { handsFrom, handsTo } = this;
    const lists = this.#visits;
    let later = from;
    for (let moved = true; moved; ) {
      moved = false;
      const last = lists.day(later + minutes);
      for (let day = lists.day(later); day <= last; day++)
        for (const other of lists.of(day))
          if ((handsFrom[other] as number) < later + minutes && (handsTo[other] as number) > later) {
            later = handsTo[other] as number;
            moved = true;
          }
    }
    return later;
  }

  #dustFree(index: number, start: number, sandToMin: number, layFromMin: number, layToMin: number): number {
    const task = this.job.tasks[index] as ShopTask;
    const { handsFrom, sandFrom, sandTo, wetFrom, wetTo } = this;
    let later = start;
    if (task.isCoat) {
      const lays = start + layFromMin;
      const dries = task.touch(start + layToMin);
      for (const other of this.#near(this.#visits, handsFrom, lays, dries)) {
        const from = sandFrom[other] as number;
        const to = sandTo[other] as number;
        if (from < to && from < dries && lays < to) later = Math.max(later, to - layFromMin);
      }
    }
    if (sandToMin === 0) return later;
    for (const other of this.#near(this.#coats, wetFrom, start, start + sandToMin)) {
      const isWet =
        (wetFrom[other] as number) < start + sandToMin && start < (wetTo[other] as number) - MINUTE_DUST;
      if (isWet) later = Math.max(later, wetTo[other] as number);
    }
    return later;
  }

  /** `stroke` itself when no other coat's first stroke is too near for the air, else a minute from which none may be. */
  #airClear(index: number, stroke: number): number {
    const { apartMin, tasks } = this.job;
    const { wetFrom } = this;
    let later = stroke;
    for (const other of this.#near(this.#coats, wetFrom, stroke - apartMin, stroke + apartMin)) {
      const first = wetFrom[other] as number;
      if (other === index || !tasks[other]?.hasVapour || Math.abs(first - stroke) >= apartMin) continue;
      later = Math.max(later, first + apartMin);
    }
    return later;
  }

  #rackFree(index: number, from: number, to: number): number {
    const { chains, tasks, rackM2 } = this.job;
    const { wetFrom, rackTo } = this;
    const own = (tasks[index] as ShopTask).chain;
    const area = (chain: number): number => chains[chain]?.footprintM2 ?? 0;
    if (area(own) > rackM2 + AREA_DUST_M2) return Number.POSITIVE_INFINITY;
    const rivals = this.#wetRivals;
    rivals.length = 0;
    let all = area(own);
    for (const other of this.#near(this.#coats, wetFrom, from, to)) {
      const leaves = (rackTo[other] as number) - MINUTE_DUST;
      const chain = (tasks[other] as ShopTask).chain;
      if ((wetFrom[other] as number) >= to || leaves <= from || chain === own) continue;
      rivals.push(other);
      all += area(chain);
    }
    if (all <= rackM2 + AREA_DUST_M2) return from;
    let later = from;
    for (let at = -1; at < rivals.length; at++) {
      const moment = at < 0 ? from : Math.max(from, wetFrom[rivals[at] as number] as number);
      let taken = area(own);
      let free = Number.POSITIVE_INFINITY;
      for (const other of rivals) {
        const ends = rackTo[other] as number;
        if ((wetFrom[other] as number) > moment || ends - MINUTE_DUST <= moment) continue;
        taken += area((tasks[other] as ShopTask).chain);
        free = Math.min(free, ends);
      }
      if (taken > rackM2 + AREA_DUST_M2) later = Math.max(later, free);
    }
    return later;
  }
}
