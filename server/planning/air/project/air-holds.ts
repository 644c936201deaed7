import type { AirCheckResult } from '../air-check-result.ts';
import { LEL_TARGET_SHARE } from '../constants.ts';

/**
 * Does a check come out within what was entered, on both sides?
 *
 * @param check the outcome of airCheck, shares and indices without unit
 * @returns `complete`: yes, by entered figures alone; `cautious`: yes, with the lowest explosive limit found elsewhere in
 *   place of one that is not known; null: no, or it cannot be told
 *
 * Source: a rule of ours. Valid range: any. Departures: none. Example: over the health limit: null.
 */
export function airHolds({ fire, health }: AirCheckResult): 'complete' | 'cautious' | null {
  if (health.verdict !== 'within-limits-entered') return null;
  if (fire.verdict === 'within-limits-entered') return 'complete';
  const standIn = fire.cautious?.peakFraction ?? null;
  if (fire.verdict === 'cannot-tell' && standIn !== null && standIn < LEL_TARGET_SHARE) return 'cautious';
  return null;
}
