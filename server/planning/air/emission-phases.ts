import { requireWithin } from '../climate/require-within.ts';
import type { EmissionPhase } from './air-room.ts';
import { ALL_AT_ONCE_PER_MIN, GONE_AT_TOUCH_DRY } from './constants.ts';

/** How a coat gives off its solvent. */
export type Emission =
  /** One fading phase, 95 % gone at the label's touch-dry time. */
  | { readonly kind: 'touch-dry'; readonly touchDryMin: number }
  /** Known constants: one or two phases, shares adding up to 1. */
  | {
      readonly kind: 'phases';
      readonly phases: readonly { readonly share: number; readonly decayPerMin: number }[];
    }
  /** Not known: everything is in the air within half a minute. */
  | { readonly kind: 'all-at-once' };

/**
 * In which fading phases does a coat give off its vapour?
 *
 * @param emission touch-dry time in minutes, or shares and decays per minute, or all at once
 * @param amount the whole amount, U
 * @returns one or two phases whose amounts add up to the whole
 *
 * Source: first-order decay fits small-chamber tests of coatings (EPA authors' abstracts; no constants for stain or
 * varnish were seen). That 95 % is gone at touch dry, k = ln 20 / touch-dry time, is a rule of ours. Valid range: times
 * and decays above 0, one or two phases, shares adding up to 1 within 1e-9; else a RangeError. Departures: the slow
 * diffusion out of a drying film is left out unless a second phase is given.
 * Example: 5000 mg with touch dry at 60 min: k = 2.9957 / 60 = 0.04993 per minute.
 */
export function emissionPhases(emission: Emission, amount: number): EmissionPhase[] {
  requireWithin('amount', amount, 0, Infinity, '');
  switch (emission.kind) {
    case 'touch-dry': {
      requireWithin('touchDryMin', emission.touchDryMin, Number.MIN_VALUE, Infinity, 'min');
      return [{ amount, decayPerMin: -Math.log(1 - GONE_AT_TOUCH_DRY) / emission.touchDryMin }];
    }
    case 'phases': {
      requireWithin('number of phases', emission.phases.length, 1, 2, '');
      const shares = emission.phases.reduce((sum, phase) => sum + phase.share, 0);
      requireWithin('sum of the shares', shares, 1 - 1e-9, 1 + 1e-9, '');
      return emission.phases.map(({ share, decayPerMin }) => ({ amount: share * amount, decayPerMin }));
    }
    case 'all-at-once':
      return [{ amount, decayPerMin: ALL_AT_ONCE_PER_MIN }];
  }
}
