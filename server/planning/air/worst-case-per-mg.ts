import type { AirSolvent } from './air-check-input.ts';
import type { AirSubstance } from './air-substance.ts';
import { presentSolvents, shareLeft } from './solvent-shares.ts';

/**
 * How much air does a milligram of a coat's vapour fill to its limit, when shares are not all known?
 *
 * @param solvents solvents of the coat with their shares of what evaporates, 0 to 1 or null
 * @param limitMgPerM3 the limit of a substance in question, mg/m3; null when not known
 * @returns m3/mg in the worst split that the known shares allow, reckoned from the known limits only
 *
 * Source: the additive mixture rule (mixtureIndex); the worst case is a rule of ours: what the known shares leave over is
 * taken to be all of the one solvent that fills most air, among those of unknown share, or among all when every share is
 * known and they do not add up. The rule is linear in the shares, so no other split is worse. Valid range: shares that
 * fit (sharesFit). Departures: a solvent without a known limit adds nothing here; airGaps asks for it.
 * Example: naphtha (350) and toluene (188 mg/m3), shares unknown: all toluene, 1/188 m3/mg.
 */
export function worstCasePerMg(
  solvents: readonly AirSolvent[],
  limitMgPerM3: (substance: AirSubstance) => number | null,
): number {
  const fills = ({ substance }: AirSolvent): number => {
    const limit = limitMgPerM3(substance);
    return limit === null ? 0 : 1 / limit;
  };
  const present = presentSolvents(solvents);
  const unnamed = present.filter((solvent) => solvent.shareOfVoc === null);
  const known = present.reduce((sum, solvent) => sum + (solvent.shareOfVoc ?? 0) * fills(solvent), 0);
  const candidates = unnamed.length > 0 ? unnamed : present;
  return known + shareLeft(solvents) * Math.max(0, ...candidates.map(fills));
}
