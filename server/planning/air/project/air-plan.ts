import type { Figure } from '../../figure.ts';
import type { Problem } from '../../problem.ts';
import type { AirVerdict } from '../air-check-result.ts';

/** The air check of a project. Minutes are those of its calendar. */
export interface AirPlan {
  /** `no-coats`: nothing is laid. */
  readonly verdict: AirVerdict | 'no-coats';
  /** In words, the worst first. */
  readonly headline: string;
  readonly sentences: readonly string[];
  readonly volumeM3: Figure;
  readonly airflow: Figure;
  readonly airChangesPerHour: Figure;
  /** The larger of the needs of fire and health. */
  readonly needed: Figure;
  readonly fire: AirFirePlan;
  readonly health: AirHealthPlan;
  readonly heatW: Figure;
  readonly heatKwh: Figure;
  readonly heatCost: Figure;
  readonly coats: readonly AirCoatPlan[];
  readonly days: readonly AirDay[];
  readonly substances: readonly AirSubstancePlan[];
  readonly suggestions: readonly AirSuggestion[];
  readonly indoors: AirIndoors;
  /** Assumptions made. */
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
  /** What is missing, each at the place where it is entered. */
  readonly problems: readonly Problem[];
}

export interface AirFirePlan {
  readonly verdict: AirVerdict;
  readonly peakPercent: Figure;
  readonly peakMinute: number | null;
  readonly needed: Figure;
  /** With the lowest limit found elsewhere in place of each unknown one; null when none is needed or known. */
  readonly cautious: {
    readonly peakPercent: Figure;
    readonly needed: Figure;
    readonly assumed: readonly string[];
  } | null;
}

export interface AirHealthPlan {
  readonly verdict: AirVerdict;
  readonly peakIndex: Figure;
  readonly peakMinute: number | null;
  readonly eightHourIndex: Figure;
  readonly shortTermIndex: Figure;
  readonly ceilingIndex: Figure;
  readonly needed: Figure;
  /** By the published steady-state formula, for comparison. */
  readonly steadyState: Figure;
  /** From the start of the last coat. */
  readonly airOut: Figure;
  readonly neverAirsOut: boolean;
}

/** One liquid of one coat of one batch. */
export interface AirCoatPlan {
  /** Task id of the calendar, and the product. */
  readonly id: string;
  readonly name: string;
  readonly startMinute: number;
  readonly litres: Figure;
  readonly vapourG: Figure;
  /** Were it alone in the air. */
  readonly peakIndex: Figure;
}

/** The air over one day of the calendar on which there is vapour. */
export interface AirDay {
  /** YYYY-MM-DD */
  readonly id: string;
  readonly fromMinute: number;
  readonly toMinute: number;
  readonly peakIndex: number | null;
  readonly peakPercent: number | null;
  /** Stretches of the day in which the vapour stands at the health limit or over it. */
  readonly over: readonly { readonly fromMinute: number; readonly toMinute: number }[];
  readonly points: readonly AirPoint[];
  /** False: an unknown limit, amount or share is left out of the curve. */
  readonly healthComplete: boolean;
  /** `cautious`: with stand-ins for unknown explosive limits; `part`: what is not known is left out. */
  readonly fireBasis: 'complete' | 'cautious' | 'part';
}

export interface AirPoint {
  readonly minute: number;
  readonly mgPerM3: number;
  readonly index: number;
  readonly percent: number;
}

export interface AirSubstancePlan {
  readonly id: string;
  readonly name: string;
  readonly limitMgPerM3: number | null;
  readonly limitSource: string;
  readonly lelPercent: number | null;
  readonly lelSource: string;
  readonly cautiousLelPercent: number | null;
  readonly cautiousSource: string;
  readonly flashPointC: number | null;
  /** Air to dilute the vapour of one litre of it to a quarter of its explosive limit. */
  readonly dilutionM3PerL: Figure;
}

export interface AirSuggestion {
  readonly id: 'open-door' | 'more-air' | 'water-based' | 'smaller-batches' | 'more-time';
  readonly text: string;
  /** What the check says when it is reckoned anew with the change. */
  readonly peakIndex: number | null;
  readonly peakPercent: number | null;
  /** True: the fire side rests on the lowest explosive limit found elsewhere. */
  readonly cautiousFire: boolean;
}

export interface AirIndoors {
  /** Null when a curing time is not known. */
  readonly earliestMinute: number | null;
  readonly latestMinute: number | null;
  /** Waits after the last coat. */
  readonly earliestWait: Figure;
  readonly latestWait: Figure;
  /** What is published and said, side by side; it does not agree. */
  readonly advice: readonly { readonly what: string; readonly says: string; readonly source: string }[];
  /** Products whose curing time is not known. */
  readonly missing: readonly string[];
}
