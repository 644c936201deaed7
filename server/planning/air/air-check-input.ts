import type { ProblemPlace } from '../problem.ts';
import type { AirSubstance } from './air-substance.ts';
import type { Emission } from './emission-phases.ts';

/** A solvent in a coat. */
export interface AirSolvent {
  readonly substance: AirSubstance;
  /** Its share of the mass that evaporates, 0 to 1; null when not known. */
  readonly shareOfVoc: number | null;
}

/** One coat, or the thinner in it: whatever evaporates together. */
export interface AirCoat {
  readonly id: string;
  /** As the user knows it: "topcoat 2". */
  readonly name: string;
  readonly startMinute: number;
  readonly litres: number | null;
  /** Mass that evaporates per litre as supplied: the material figure, not "less water", g/L. */
  readonly vocGPerL: number | null;
  readonly solvents: readonly AirSolvent[];
  readonly emission: Emission;
}

export interface AirCheckInput {
  readonly volumeM3: number | null;
  /** Fresh air through the room, m3/min; null when not known. */
  readonly airflowM3PerMin: number | null;
  /** 1 for perfect mixing, up to 10 for poor. */
  readonly mixingFactor: number;
  readonly indoorC: number;
  readonly outdoorC: number | null;
  readonly coats: readonly AirCoat[];
  /**
   * `peak`: no moment may reach the mixture index 1 (cautious, the default). `averages`: the 8-hour average may not, as
   * shift-long limits are defined; short-term and ceiling limits count in both.
   */
  readonly healthBasis?: 'peak' | 'averages';
  /** What else keeps the check from telling, found out by whoever made the input. */
  readonly alsoMissing?: readonly AirGap[];
  /** True leaves the needed airflows unknown: finding them takes most of the time. */
  readonly withoutNeeds?: boolean;
}

/** Something that must be known before the air can be judged. */
export interface AirGap {
  readonly field:
    | 'calendar'
    | 'room-volume'
    | 'airflow'
    | 'litres'
    | 'voc'
    | 'solvents'
    | 'solvent-shares'
    | 'molar-mass'
    | 'lel'
    | 'limit';
  readonly coatId: string | null;
  readonly substanceId: string | null;
  /** Where it is entered, where whoever found the gap knows. */
  readonly at?: ProblemPlace;
  readonly message: string;
  readonly wayOut: string;
}
