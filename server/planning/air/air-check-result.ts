import type { AirGap } from './air-check-input.ts';

/** From worst to best, except that `cannot-tell` says nothing about how bad it is. */
export type AirVerdict =
  | 'over-ceiling'
  | 'over-target'
  | 'over-health'
  | 'cannot-tell'
  | 'within-limits-entered';

/** The fire side: vapour against the lower explosive limit. */
export interface FireResult {
  readonly verdict: Exclude<AirVerdict, 'over-health'>;
  /** Highest share of the LEL; of the known part only when `complete` is false; null when nothing is known. */
  readonly peakFraction: number | null;
  /** Null when unknown, and in a closed room, where the peak is only approached. */
  readonly peakMinute: number | null;
  readonly complete: boolean;
  /** Airflow that keeps the peak under 10 % of the LEL, m3/min; null when it cannot be told. */
  readonly neededAirflowM3PerMin: number | null;
  /** The same with the lowest LEL found elsewhere in place of each unknown one; null when no stand-in is needed. */
  readonly cautious: CautiousFire | null;
}

export interface CautiousFire {
  readonly peakFraction: number | null;
  readonly neededAirflowM3PerMin: number | null;
  readonly assumed: readonly {
    readonly substanceId: string;
    readonly name: string;
    readonly lelPercent: number;
    readonly source: string;
  }[];
}

/** The health side: the mixture index, concentrations over exposure limits summed. */
export interface HealthResult {
  readonly verdict: 'over-health' | 'cannot-tell' | 'within-limits-entered';
  /** Highest index at any moment, against shift-long limits; of the known part only when `complete` is false. */
  readonly peakIndex: number | null;
  readonly peakMinute: number | null;
  /** Highest 8-hour average of that index. */
  readonly eightHourIndex: number | null;
  /** Highest 15-minute average against short-term limits; 0 where no vapour has one. */
  readonly shortTermIndex: number | null;
  /** Highest moment against ceiling limits; 0 where no vapour has one. */
  readonly ceilingIndex: number | null;
  readonly complete: boolean;
  /** Airflow that keeps every index that counts under 1, m3/min. */
  readonly neededAirflowM3PerMin: number | null;
  /** Steady-state dilution at the highest emission, for comparison, m3/min. */
  readonly steadyStateAirflowM3PerMin: number | null;
  /** Minutes after the start of the last coat until the index is under 1 for good; null when unknown or never. */
  readonly airOutMin: number | null;
  /** True when a closed room never comes under 1. */
  readonly neverAirsOut: boolean;
}

export interface AirCheckResult {
  readonly verdict: AirVerdict;
  readonly fire: FireResult;
  readonly health: HealthResult;
  /** Everything that is missing; empty when the check is complete. */
  readonly missing: readonly AirGap[];
  /** Mass evaporating per coat, g; null where litres or VOC are unknown. */
  readonly coats: readonly { readonly id: string; readonly vocGrams: number | null }[];
  /** The larger of both needs, m3/min; null when either cannot be told. */
  readonly neededAirflowM3PerMin: number | null;
  readonly airChangesPerHour: number | null;
  /** Heat to warm the fresh air entered, W; null without airflow or outdoor temperature. */
  readonly makeUpHeatW: number | null;
  /** Assumptions made, in words. */
  readonly notes: readonly string[];
  /** Always shown beside a result. */
  readonly cautions: readonly string[];
}
