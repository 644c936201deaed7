import type { RoomSource } from './air-room.ts';
import { expDifference, expSecondDifference } from './exp-difference.ts';

/**
 * The inner sums of the room, without checks: roomConcentration, roomDose, roomPeaks and highestAverage check at their
 * doors and then call these many times over. Source of all three: the closed solution described in roomConcentration.
 */

/** From here on e^-x is under 10^-26 of what it was, far below rounding of anything it is added to: left out. Ours. */
const GONE = 60;

/** One phase of one coat, flattened. */
export interface LaidPhase {
  readonly startMinute: number;
  readonly amount: number;
  readonly decayPerMin: number;
}

/**
 * Which phases do these coats have, in one list?
 *
 * @param sources coats, amounts in U
 * @returns their phases with the start of their coat; definition, no units of its own
 */
export function laidPhases(sources: readonly RoomSource[]): LaidPhase[] {
  return sources.flatMap(({ startMinute, phases }) =>
    phases.map(({ amount, decayPerMin }) => ({ startMinute, amount, decayPerMin })),
  );
}

/**
 * How much comes off per minute at a minute?
 *
 * @param phases phases, amounts in U; those that start later count as nothing
 * @param minute the minute asked about
 * @returns emission, U per minute
 */
export function emissionOf(phases: readonly LaidPhase[], minute: number): number {
  let sum = 0;
  for (const { startMinute, amount, decayPerMin } of phases)
    if (minute >= startMinute && decayPerMin * (minute - startMinute) < GONE)
      sum += amount * decayPerMin * Math.exp(-decayPerMin * (minute - startMinute));
  return sum;
}

/**
 * How much is in the air at a minute?
 *
 * @param phases phases, amounts in U
 * @param exchangePerMin air exchange, per minute
 * @param minute the minute asked about
 * @returns amount in the whole room, U: t M k times the first divided difference of the exponential at -kt and -Nt
 */
export function inAirOf(phases: readonly LaidPhase[], exchangePerMin: number, minute: number): number {
  let sum = 0;
  for (const { startMinute, amount, decayPerMin } of phases) {
    const age = minute - startMinute;
    if (age > 0 && (decayPerMin * age < GONE || exchangePerMin * age < GONE))
      sum += amount * decayPerMin * age * expDifference(-decayPerMin * age, -exchangePerMin * age);
  }
  return sum;
}

/**
 * How much has been in the air up to a minute, times the time it was there?
 *
 * @param phases phases, amounts in U
 * @param exchangePerMin air exchange, per minute
 * @param minute the end of the time
 * @returns integral of inAirOf, U min: t^2 M k times the second divided difference at 0, -kt and -Nt
 */
export function doseOf(phases: readonly LaidPhase[], exchangePerMin: number, minute: number): number {
  let sum = 0;
  for (const { startMinute, amount, decayPerMin } of phases) {
    const age = minute - startMinute;
    if (age > 0)
      sum +=
        amount * decayPerMin * age ** 2 * expSecondDifference(0, -decayPerMin * age, -exchangePerMin * age);
  }
  return sum;
}
