import type { RecoatInterval } from '../product.ts';
import type { ApplicationMethod, StepKind } from '../project-input.ts';
import type { CoatFacts } from './calendar-input.ts';

/** Pieces that go through the shop together, and the tasks they pass, in order. */
export interface CalendarBatch {
  readonly id: string;
  readonly pieces: readonly { readonly pieceId: string; readonly count: number }[];
  /** Rack area the wet batch takes, m2: the larger face of each piece. */
  readonly footprintM2: number;
  readonly tasks: readonly CalendarTask[];
  /** The recipe ends with a step of curing: the batch is ready only when cured. */
  readonly curesAtEnd: boolean;
}

/** One visit of one batch to the bench: a coat, or a pass of sanding or dusting off. */
export interface CalendarTask {
  /** `batch:face:step-number`. */
  readonly id: string;
  readonly batchId: string;
  readonly recipeId: string;
  readonly stepId: string;
  readonly number: number;
  readonly kind: StepKind;
  readonly name: string;
  readonly method: ApplicationMethod | null;
  readonly face: 'show' | 'back' | 'both';
  readonly areaM2: number;
  readonly times: TaskTimes;
  /** The same with scuff-sanding first, for a coat that falls into a recoat interval that asks for it. */
  readonly scuffedTimes: TaskTimes;
  readonly coat: TaskCoat | null;
  /** Earliest start by the pieces and the material. */
  readonly releaseMinute: number;
  /** The recipe asks for the coat before to be cured first. */
  readonly waitsForCure: boolean;
}

/** Minutes from the start of a task. */
export interface TaskTimes {
  /** Sanding lasts from 0 to here; 0 when there is none. */
  readonly sandToMin: number;
  /** Laying the coat: first and last stroke. Both 0 for dry work. */
  readonly layFromMin: number;
  readonly layToMin: number;
  /** Hands are free again. A multiple of the step. */
  readonly handsOnMin: number;
}

/** Label figures with the gaps filled as `calendarTasks` says. */
export interface TaskCoat {
  readonly facts: CoatFacts;
  readonly touchDryMin: number;
  readonly handleDryMin: number;
  /** Never empty. */
  readonly recoat: readonly RecoatInterval[];
}
