import type { DryingRule } from '../climate/drying-rule.ts';
import type { ShopClimate } from '../climate/shop-climate.ts';
import type { Carrier, RecoatInterval } from '../product.ts';
import type { ApplicationMethod, StepKind, UnitSystem } from '../project-input.ts';
import type { ClockShift } from './clock-shift.ts';

/**
 * Everything the coat calendar needs to know. All times are whole real minutes since midnight at the start of day 0, so
 * that drying is never an hour off. There is no clock and no time zone here: whoever calls (the HTTP layer, the
 * iCalendar feed) turns dates into minutes before and minutes into dates after, and says in `clockShifts` when clocks
 * are put forward or back, since working hours follow the clock on the wall.
 */
export interface CalendarInput {
  /** How sentences print areas and temperatures; metric when left out. Plans do not depend on it. */
  readonly units?: UnitSystem;
  /** Weekday of day 0: 0 is Monday, 6 is Sunday. */
  readonly firstWeekday: number;
  /** In order of time; empty when clocks are not changed. */
  readonly clockShifts: readonly ClockShift[];
  /** Nothing new is planned before this minute: "now", rounded up. */
  readonly startMinute: number;
  /** All work is done within so many days from day 0, 1 to 400; the last coat may dry on after them. */
  readonly horizonDays: number;
  /** Work starts on multiples of this: 5 means 09:00, 09:05. A divisor of 60. */
  readonly stepMin: number;
  /** Seven lists, Monday first: when there are hands in the shop. Empty for a day without. */
  readonly hours: readonly (readonly WorkWindow[])[];
  /** Day numbers without work, whatever the weekday. */
  readonly daysOff: readonly number[];
  /** People who can work at the same time, each on one task. */
  readonly hands: number;
  /** Area on which wet parts can lie, m2; null when it never runs out. */
  readonly rackM2: number | null;
  /** Most face area, m2, a batch may have by the user's wish; null for none. */
  readonly largestBatchM2: number | null;
  readonly climate: ShopClimate;
  readonly dryingRule: DryingRule;
  /** How much warmer than the air the wood is when it is coated, C; below 0 for parts brought in from the cold. */
  readonly woodWarmerC: number;
  /** True when sanding dust cannot reach wet coats: another room, or sanding outdoors. */
  readonly sandsApart: boolean;
  readonly recipes: readonly CalendarRecipe[];
  readonly pieces: readonly CalendarPiece[];
  readonly pins: readonly CalendarPin[];
  readonly done: readonly CalendarDone[];
  /** What keeps the vapour of the coats under the health limit; left out where that is not asked for. */
  readonly vapour?: CalendarVapour;
  readonly seed: number;
  /** How many schedules the search may build. */
  readonly iterations: number;
}

/** Rules under which the coats of one calendar never fill the air to a limit, together. */
export interface CalendarVapour {
  /** The first strokes of any two coats that give off vapour are at least so far apart, minutes. */
  readonly apartMin: number;
  /** Most area of one coat by step id, m2; steps that give off nothing are left out. */
  readonly mostM2: Readonly<Record<string, number>>;
}

/** Minutes after midnight, 0 to 1440, `fromMin` below `toMin`. A shift past midnight is two windows. */
export interface WorkWindow {
  readonly fromMin: number;
  readonly toMin: number;
}

export interface CalendarRecipe {
  readonly id: string;
  readonly name: string;
  readonly faces: 'flip' | 'points';
  readonly steps: readonly CalendarStep[];
}

export interface CalendarStep {
  readonly id: string;
  readonly kind: StepKind;
  /** Product, blend or abrasive name, as printed. */
  readonly name: string;
  readonly coats: number;
  readonly method: ApplicationMethod;
  /** What of the product bears on the calendar; null for dry steps. */
  readonly coat: CoatFacts | null;
  /** When the material is in the shop; 0 when it is there already. */
  readonly materialMinute: number;
}

/** Label figures of one liquid, or of a blend; minutes in the reference air; null where not known. */
export interface CoatFacts {
  readonly carrier: Carrier | null;
  readonly touchDryMin: number | null;
  readonly handleDryMin: number | null;
  readonly cureMin: number | null;
  readonly workingTimeMin: number | null;
  /** Empty when not known. */
  readonly recoat: readonly RecoatInterval[];
  readonly minTemperatureC: number | null;
  readonly maxTemperatureC: number | null;
  readonly maxHumidityPercent: number | null;
}

/** Equal pieces of one part. */
export interface CalendarPiece {
  readonly id: string;
  readonly name: string;
  readonly count: number;
  /** Area of one piece, m2. */
  readonly showM2: number;
  readonly backM2: number;
  /** Seen edges, coated with the show face, or with the back where the show face gets no recipe. */
  readonly edgeM2: number;
  /** Empty where the face gets no finish. */
  readonly showRecipeId: string;
  readonly backRecipeId: string;
  /** When the pieces are cut and banded, so that finishing can begin. */
  readonly readyMinute: number;
  /** A name keeps pieces of the same name in batches of their own; empty for none. */
  readonly batchName: string;
}

/** The user wants this task to start at this minute. */
export interface CalendarPin {
  readonly taskId: string;
  readonly startMinute: number;
}

/** What has happened: from when to when the task was worked on. For a coat: from first to last stroke. */
export interface CalendarDone {
  readonly taskId: string;
  readonly startMinute: number;
  readonly endMinute: number;
}
