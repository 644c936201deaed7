import type { Problem } from '../problem.ts';
import type { ApplicationMethod, StepKind } from '../project-input.ts';

/** The dated plan of hands-on work and drying. Minutes since midnight of day 0, as in calendar-input.ts. */
export interface CalendarPlan {
  /** `not-found`: none was found within the budget, but it is not proven that there is none. */
  readonly state: 'planned' | 'nothing-to-do' | 'does-not-fit' | 'not-found';
  /** In order of start; empty unless planned. */
  readonly tasks: readonly CalendarTaskPlan[];
  readonly batches: readonly CalendarBatchPlan[];
  /** Every batch is dry to handle. Null when not planned, or when a recipe had to be left out. */
  readonly readyToHandleMinute: number | null;
  /** Every batch is dry to handle, and cured where its recipe ends with curing. */
  readonly readyToAssembleMinute: number | null;
  /** Every coat is cured; null also when a curing time is not known. */
  readonly curedMinute: number | null;
  /** Why it is not known when everything is cured, one a step; empty when it is. */
  readonly uncured: readonly CalendarUncured[];
  /** No plan is ready to assemble before this minute; null when that is not known. */
  readonly boundMinute: number | null;
  /** How much later than the bound the plan is ready, as a share of the time from the start to the bound. */
  readonly gap: number | null;
  /** True: no plan is ready sooner; or, where nothing fits, it is proven that nothing does. */
  readonly proven: boolean;
  /** Working windows in which someone has to be in the shop. */
  readonly visits: number;
  /** True: no plan that is ready as soon needs fewer. */
  readonly visitsProven: boolean;
  /** What is in the way when nothing fits; empty when planned. */
  readonly blocks: readonly CalendarBlock[];
  readonly problems: readonly Problem[];
}

export interface CalendarTaskPlan {
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
  /** `assumed`: not ticked off, but a later task of the batch is. */
  readonly state: 'planned' | 'pinned' | 'done' | 'assumed';
  readonly startMinute: number;
  readonly endMinute: number;
  readonly handsOnMin: number;
  /** The coat before is scuff-sanded first, within this visit. */
  readonly scuffFirst: boolean;
  /** First and last stroke of a coat; null for dry work. */
  readonly layFromMinute: number | null;
  readonly layToMinute: number | null;
  /** The coat is dust-dry, and dry to handle; null for dry work. */
  readonly touchDryMinute: number | null;
  readonly handleDryMinute: number | null;
  /** When drying and recoat rules allow the first stroke (for dry work and scuffing: the start), given the tasks before it. */
  readonly allowedFromMinute: number;
  /** Null where it never closes. */
  readonly allowedToMinute: number | null;
  /** What keeps it from starting sooner, and which other task that is; null for what is done. */
  readonly heldBy: { readonly kind: CalendarHold; readonly taskId: string | null } | null;
}

/**
 * start: nothing is planned before. material: pieces or material are not there. before: the step before. drying: the
 * coat before. hours, air: no working hours, no air the product may be laid in. hands, dust, rack, vapour: another task.
 * next-coat: sooner, the next coat would miss its window. nothing: sooner would not make the job ready sooner.
 */
export type CalendarHold =
  | 'pin'
  | 'start'
  | 'material'
  | 'before'
  | 'drying'
  | 'hours'
  | 'air'
  | 'hands'
  | 'dust'
  | 'rack'
  | 'vapour'
  | 'next-coat'
  | 'nothing';

/** A step because of which it is not known when the job is cured. */
export interface CalendarUncured {
  readonly recipeId: string;
  readonly stepId: string;
  /** Product or blend, as printed. */
  readonly name: string;
  /** The label time is not entered, or the coat never cures in this air. */
  readonly because: 'not-known' | 'never';
}

export interface CalendarBatchPlan {
  readonly id: string;
  readonly pieces: readonly { readonly pieceId: string; readonly count: number }[];
  readonly footprintM2: number;
  readonly readyToHandleMinute: number;
  readonly readyToAssembleMinute: number;
  readonly curedMinute: number | null;
}

/** One thing in the way, and changes that were tried and do free it. */
export interface CalendarBlock {
  readonly kind:
    | 'working-window'
    | 'air'
    | 'drying'
    | 'rack'
    | 'recoat'
    | 'pin'
    | 'done'
    | 'hands'
    | 'dust'
    | 'vapour'
    | 'horizon';
  readonly taskId: string | null;
  readonly message: string;
  readonly waysOut: readonly CalendarWayOut[];
}

/** A change to the input under which a plan was found. */
export interface CalendarWayOut {
  readonly change:
    | 'drop-pin'
    | 'longer-windows'
    | 'open-days-off'
    | 'more-hands'
    | 'larger-rack'
    | 'smaller-batches'
    | 'warmer-shop'
    | 'drier-shop'
    | 'warmer-wood'
    | 'sand-apart'
    | 'longer-horizon'
    | 'forget-done';
  /**
   * By how much, or what is set: minutes of longer windows, C of warmth, points of humidity, people, m2 of rack or batch,
   * days ahead; null where there is nothing to say.
   */
  readonly value: number | null;
  /** The task to unpin; null for every pin, and for other changes. */
  readonly taskId: string | null;
  readonly message: string;
  /** When the job is then ready to assemble. */
  readonly readyToAssembleMinute: number;
}
