/** How much work goes into longer searches. */
export interface CuttingSettings {
  /** Time for each material after an edit, ms; 0 starts no search by itself. */
  readonly searchMs: number;
  /** Time for advice on each material, ms. */
  readonly adviceMs: number;
  /** Rest after an edit before a search begins, ms: whoever types goes on typing. */
  readonly restMs: number;
  /** Ends each search after so many steps, for runs that must come out the same; null leaves it to the time. */
  readonly mostSteps: number | null;
}

export const DEFAULT_CUTTING: CuttingSettings = {
  searchMs: 10_000,
  adviceMs: 6000,
  restMs: 500,
  mostSteps: null,
};

/** A proven plan is searched this long for a larger offcut, ms. Ours. */
export const OFFCUT_MS = 2000;

/** "Search longer" takes so many times the time after an edit, and at least this long, ms. Ours. */
export const LONGER_FACTOR = 6;
export const LEAST_LONGER_MS = 1000;
