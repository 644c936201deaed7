import type { TaskTimes } from '../calendar-batch.ts';
import type { MinuteSpan } from '../working-windows.ts';
import type { DryingClock } from './drying-clock.ts';
import type { StartRange } from './start-ranges.ts';

/**
 * The calendar as the searches see it: chains of tasks, one chain per batch, tied by drying inside the chain and by
 * hands, rack and dust between chains. Minutes since midnight of day 0.
 */
export interface ShopJob {
  readonly tasks: readonly ShopTask[];
  /** First and last task of each chain; the tasks between belong to it. */
  readonly chains: readonly ShopChain[];
  readonly windows: readonly MinuteSpan[];
  readonly hands: number;
  /** Infinity where the rack never runs out. */
  readonly rackM2: number;
  readonly sandsApart: boolean;
  /** First strokes of coats that give off vapour are so far apart at least, minutes; 0 where that is not asked for. */
  readonly apartMin: number;
  readonly stepMin: number;
  readonly startMinute: number;
  readonly endMinute: number;
}

export interface ShopChain {
  readonly first: number;
  readonly last: number;
  readonly footprintM2: number;
  /** Last coat of the chain; -1 when there is none. */
  readonly lastCoat: number;
  /** When the last coat counts as ready: dry to handle, or cured where the recipe ends so. */
  readonly readyClock: DryingClock | null;
  /** The chain before that is equal in every way; -1 when there is none. */
  readonly twin: number;
}

/** A recoat interval with its clocks. */
export interface ShopInterval {
  readonly opens: DryingClock;
  /** Null when it never closes. */
  readonly closes: DryingClock | null;
  /** The task that starts in it sands first, within its own visit. */
  readonly scuffed: boolean;
  /** Which of the product's intervals it is. */
  readonly index: number;
}

export interface ShopTask {
  readonly chain: number;
  /** Equal for tasks of different batches that are alike in all but their area and their earliest start. */
  readonly sameAs: string;
  /** Task before in the chain; -1 at its head. */
  readonly before: number;
  /** Last coat before in the chain, whatever the face; -1 when there is none. */
  readonly coatBefore: number;
  /** What that coat must have reached: nothing to wait for, touch dry, dry to handle, or a recoat interval. */
  readonly waits: 'none' | 'touch' | 'handle' | 'recoat';
  readonly waitsForCure: boolean;
  /** For `recoat`: intervals to choose from, by opening. */
  readonly intervals: readonly ShopInterval[];
  /** For `recoat`: the sanding between the two coats that has to fall into the interval too; -1 for none. */
  readonly sandingBetween: number;
  readonly times: TaskTimes;
  readonly scuffedTimes: TaskTimes;
  readonly ranges: readonly StartRange[];
  readonly scuffedRanges: readonly StartRange[];
  readonly releaseMinute: number;
  readonly isCoat: boolean;
  /** A coat whose vapour keeps others away. */
  readonly hasVapour: boolean;
  /** No coat of this task leaves the rack sooner after its first stroke; 0 for dry work. */
  readonly leastRackMin: number;
  readonly touch: DryingClock;
  readonly handle: DryingClock;
  readonly cure: DryingClock | null;
  /** Done already: its minutes are history, and it needs no hands. */
  readonly doneFrom: number | null;
  readonly doneTo: number | null;
}

/** A start per task, and which interval each coat fell into (-1 where there was nothing to choose). */
export interface ShopSchedule {
  readonly start: readonly number[];
  readonly interval: readonly number[];
}
