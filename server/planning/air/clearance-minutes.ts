import { requireWithin } from '../climate/require-within.ts';
import { MINUTES_PER_HOUR, MIXING_FACTOR_MAX, MIXING_FACTOR_MIN } from './constants.ts';

/**
 * How long does fresh air take to carry off what is in a room, once nothing is added?
 *
 * @param airChangesPerHour air changes per hour, above 0
 * @param removedShare share to be removed, 0 to below 1: 0.99 for 99 percent
 * @param mixingFactor 1 for perfect mixing, up to 10 for poor
 * @returns minutes
 *
 * Source: t = -ln(C2/C1) x 60 / ACH, times the mixing factor: CDC, MMWR 43(RR-13), 28 October 1994, Table S3-1. Valid
 * range: as above; else a RangeError. Departures: none. A wet coat goes on adding vapour: see airOutMinute for that.
 * Example: 6 air changes, 99 percent: 46.05 min, printed as 46.
 */
export function clearanceMinutes(
  airChangesPerHour: number,
  removedShare: number,
  mixingFactor: number = MIXING_FACTOR_MIN,
): number {
  requireWithin('airChangesPerHour', airChangesPerHour, Number.MIN_VALUE, Infinity, 'per hour');
  requireWithin('removedShare', removedShare, 0, 1 - Number.EPSILON, '');
  requireWithin('mixingFactor', mixingFactor, MIXING_FACTOR_MIN, MIXING_FACTOR_MAX, '');
  const minutes = (-Math.log(1 - removedShare) * MINUTES_PER_HOUR * mixingFactor) / airChangesPerHour;
  return minutes === 0 ? 0 : minutes;
}
