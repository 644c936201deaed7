import { requireNumber } from './require-number.ts';

/**
 * What area does a litre of a blend cover?
 *
 * coverage = sum of (parts x coverage) / sum of parts
 *
 * @param components parts by volume (0 or more, not all 0) and coverage in m2/L (above 0; null when unknown) of each
 * @returns m2/L; null as soon as a component that is really in the blend has no known coverage
 *
 * Source: follows from the spreading-rate rule (`coverageFromSolids`). At one and the same dry film, coverage is
 * proportional to solids by volume; the solids of a mix are the volume-weighted mean of its components' solids;
 * so the coverage of the mix is the volume-weighted mean of their coverages, and not the harmonic mean.
 * Valid for components meant to leave the same film, as stains of one family are. Departures: none.
 *
 * Example: 3 parts at 10 m2/L and 1 part at 14 m2/L: (30 + 14) / 4 = 11 m2/L.
 */
export function blendCoverage(
  components: readonly { readonly parts: number; readonly coverageM2PerL: number | null }[],
): number | null {
  let whole = 0;
  let weighted = 0;
  let unknown = false;
  for (const { parts, coverageM2PerL } of components) {
    requireNumber('blendCoverage: parts', parts, { atLeast: 0 }, 'parts');
    if (parts === 0) continue;
    whole += parts;
    if (coverageM2PerL === null) unknown = true;
    else
      weighted +=
        parts * requireNumber('blendCoverage: coverageM2PerL', coverageM2PerL, { above: 0 }, 'm2/L');
  }
  requireNumber('blendCoverage: sum of parts', whole, { above: 0 }, 'parts');
  return unknown ? null : weighted / whole;
}
