import { lelMgPerM3 } from './lel-mg-per-m3.ts';
import { type MixtureIndex, mixtureIndex } from './mixture-index.ts';

/** One flammable vapour in the air. */
export interface FlammableVapour {
  readonly concentrationMgPerM3: number;
  readonly molarMassGPerMol: number;
  /** Percent by volume; null when not known. */
  readonly lelPercent: number | null;
}

/**
 * What share of the lower explosive limit has a mixture of vapours reached?
 *
 * @param vapours concentration mg/m3, molar mass g/mol and LEL percent of each
 * @param airC air temperature, C
 * @returns the share, 1 at the limit, and whether every LEL was known
 *
 * Source: Le Chatelier's mixing rule (from memory), by mixtureIndex and lelMgPerM3. Valid range: theirs. Departures: none.
 * Example: 4190 mg/m3 of mineral spirits at 0.7 % and 144 g/mol, 20 C: 0.1.
 */
export function lelFraction(vapours: readonly FlammableVapour[], airC: number): MixtureIndex {
  return mixtureIndex(
    vapours.map(({ concentrationMgPerM3, molarMassGPerMol, lelPercent }) => ({
      concentration: concentrationMgPerM3,
      limit: lelPercent === null ? null : lelMgPerM3(lelPercent, molarMassGPerMol, airC),
    })),
  );
}
