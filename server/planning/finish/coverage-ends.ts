import type { Product } from '../product.ts';
import { UM_PER_MIL } from './constants.ts';
import { coverageFromSolids } from './coverage-from-solids.ts';
import { evidenceText } from './evidence-text.ts';
import { feetCoverageFromSolids } from './feet-coverage-from-solids.ts';
import { isPositive } from './is-positive.ts';
import { type Reading, readFigure } from './read-figure.ts';

export type CoverageEnd = 'low' | 'typical' | 'high';
export const COVERAGE_ENDS = ['low', 'typical', 'high'] as const satisfies readonly CoverageEnd[];
export type CoverageEnds = Readonly<Record<CoverageEnd, Reading>>;

/**
 * What does one litre of a product cover at the low end, typically and at the high end?
 *
 * @param product a finish product
 * @returns m2/L for each end with its source; null when nothing at all is known
 *
 * Source: the catalogue figure's evidence, or the solids rule (`coverageFromSolids`). What stands in for a missing
 * end is a rule of ours: the typical value stands in for a missing low or high one; solids and dry film stand in for
 * a missing typical one, unless they contradict a known end; else the one end that is known stands for all. Each
 * stand-in is said in the notes. So the low end is never above the high one unless the catalogue has it so.
 *
 * Example: no coverage, 35 % solids and 28 um dry film: 12.5 m2/L at all three ends.
 */
export function coverageEnds(product: Product): CoverageEnds {
  const stated = product.figures.coverage;
  const low = isPositive(stated?.low) ? stated.low : null;
  const high = isPositive(stated?.high) ? stated.high : null;
  const source = stated === undefined ? '' : evidenceText(stated);
  const typical = typicalCoverage(product, low, high, source);
  const standIn = (end: 'low' | 'high'): Reading =>
    !isPositive(stated?.typical)
      ? typical
      : { ...typical, notes: [`No ${end} coverage is known; the typical one stands in for it.`] };
  return {
    low: low === null ? standIn('low') : { value: low, source, notes: [] },
    typical,
    high: high === null ? standIn('high') : { value: high, source, notes: [] },
  };
}

function typicalCoverage(product: Product, low: number | null, high: number | null, source: string): Reading {
  const typical = product.figures.coverage?.typical;
  if (isPositive(typical)) return { value: typical, source, notes: [] };
  const computed = computedCoverage(product);
  const fits =
    computed?.value != null && computed.value >= (low ?? 0) && computed.value <= (high ?? Infinity);
  if (computed !== null && fits) return computed;
  const end = low ?? high;
  if (end === null) return { value: null, source: 'not in the catalogue', notes: [] };
  const name = low === null ? 'high' : 'low';
  return {
    value: end,
    source,
    notes: [`Only the ${name} coverage is known; it stands in for the typical one.`],
  };
}

function computedCoverage(product: Product): Reading | null {
  const solids = readFigure(product, 'solidsByVolume');
  const film = readFigure(product, 'dryFilm');
  if (solids.value === null || solids.value > 100 || film.value === null) return null;
  const feet = feetCoverageFromSolids({
    solidsPercent: solids.value,
    dryFilmMil: film.value / UM_PER_MIL,
  });
  return {
    value: coverageFromSolids({ solidsPercent: solids.value, dryFilmUm: film.value }),
    source: `10 x ${solids.value} % solids (${solids.source}) / ${film.value} um dry film (${film.source})`,
    notes: [
      `Coverage is reckoned from solids and dry film; in US units 1604 x solids / mil = ${feet.toFixed(0)} ft2/gal.`,
    ],
  };
}
