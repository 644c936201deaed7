/**
 * How drying speeds up and slows down with the air. Every number is an assumption the user may change: no published
 * rule for the drying of finishes by temperature was found.
 */
export interface DryingRule {
  /** Air the label's drying time is taken to be for. */
  readonly referenceC: number;
  readonly referenceRelativeHumidityPercent: number;
  /** How many times faster a coat dries in air 10 C warmer; at least 1. */
  readonly factorPer10C: number;
  /** Waterborne coats also follow the air's vapour-pressure deficit, or do not. */
  readonly waterborne: 'vapour-deficit' | 'temperature-only';
  /** Below this nothing dries, where the product's own minimum temperature is not known, C. */
  readonly fallbackMinC: number;
}

/**
 * The rule used unless the user changes it. Twice as fast per 10 C: from memory, common practice, no source. Reference
 * 22 C and 50 %: the middle of the 20 to 25 C most labels name; common practice, no source. Nothing dries below 5 C:
 * marine painting manual ("below 5 C some coatings slow dramatically or stop").
 */
export const DEFAULT_DRYING_RULE: DryingRule = {
  referenceC: 22,
  referenceRelativeHumidityPercent: 50,
  factorPer10C: 2,
  waterborne: 'vapour-deficit',
  fallbackMinC: 5,
};
