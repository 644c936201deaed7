import { requireWithin } from '../climate/require-within.ts';

export interface MixtureTerm {
  /** Concentration, in the unit of the limit. */
  readonly concentration: number;
  /** Exposure limit or lower explosive limit; null when not known. */
  readonly limit: number | null;
}

export interface MixtureIndex {
  /** Sum over the terms whose limit is known; the whole index when `complete`, else the least it can be. */
  readonly index: number;
  /** False when a vapour that is present has no known limit. */
  readonly complete: boolean;
}

/**
 * How close does a mixture of vapours come to its limit, all together?
 *
 * @param terms concentration and limit of each vapour, in one unit per term
 * @returns the sum of concentration / limit, and whether every limit was known
 *
 * Source: additive mixture rule, C1/L1 + C2/L2 + ... compared with 1, University of Toledo industrial ventilation notes
 * (that the limit is 1: 29 CFR 1910.1000(d)(2)(i), from memory). The same sum over lower explosive limits is Le
 * Chatelier's rule (from memory). Valid range: concentrations from 0, limits above 0; else a RangeError. Departures: an
 * unknown limit is not counted as harmless: the sum is then marked as incomplete.
 * Example: 50 of 100 ppm and 40 of 200 ppm: 0.5 + 0.2 = 0.7.
 */
export function mixtureIndex(terms: readonly MixtureTerm[]): MixtureIndex {
  let index = 0;
  let complete = true;
  for (const { concentration, limit } of terms) {
    requireWithin('concentration', concentration, 0, Infinity, '');
    if (limit === null) complete &&= concentration === 0;
    else index += concentration / requireWithin('limit', limit, Number.MIN_VALUE, Infinity, '');
  }
  return { index, complete };
}
