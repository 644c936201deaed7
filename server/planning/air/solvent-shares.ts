import type { AirSolvent } from './air-check-input.ts';

/** Shares that miss the whole, or pass it, by less than this are taken to add up: a ten-thousandth. Ours. */
const SHARE_ROUNDING = 1e-4;

/**
 * Can the known shares of a coat's solvents be right?
 *
 * @param solvents solvents with their shares of what evaporates, 0 to 1 or null
 * @returns false when a share lies outside 0 to 1 or they add up to more than one
 *
 * Source: definition of a share; a ten-thousandth is forgiven as rounding. Valid range: any. Departures: none.
 * Example: 0.7 and 0.4 cannot be right.
 */
export function sharesFit(solvents: readonly AirSolvent[]): boolean {
  const inside = ({ shareOfVoc }: AirSolvent) => shareOfVoc === null || (shareOfVoc >= 0 && shareOfVoc <= 1);
  return solvents.every(inside) && knownShare(solvents) <= 1 + SHARE_ROUNDING;
}

/**
 * What share of a coat's vapour do the known shares leave over?
 *
 * @param solvents solvents with their shares of what evaporates, 0 to 1 or null
 * @returns 0 to 1; 0 where they add up to one within a ten-thousandth
 *
 * Source: definition. Valid range: shares that fit. Departures: none.
 * Example: 0.7 and 0.2 leave 0.1.
 */
export function shareLeft(solvents: readonly AirSolvent[]): number {
  const known = knownShare(solvents);
  return known >= 1 - SHARE_ROUNDING ? 0 : 1 - known;
}

/**
 * Which solvents are, or may be, in the vapour?
 *
 * @param solvents solvents with their shares of what evaporates, 0 to 1 or null
 * @returns those with a share above 0, and those of unknown share while the known ones leave something over
 *
 * Source: definition. Valid range: shares that fit. Departures: none.
 * Example: shares 1, 0 and unknown: only the first.
 */
export function presentSolvents(solvents: readonly AirSolvent[]): AirSolvent[] {
  const left = shareLeft(solvents);
  return solvents.filter(({ shareOfVoc }) => (shareOfVoc === null ? left > 0 : shareOfVoc > 0));
}

function knownShare(solvents: readonly AirSolvent[]): number {
  return solvents.reduce((sum, solvent) => sum + (solvent.shareOfVoc ?? 0), 0);
}
