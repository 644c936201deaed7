import { requireWithin } from '../climate/require-within.ts';
import { MIXING_FACTOR_MAX, MIXING_FACTOR_MIN } from './constants.ts';

/** A room taken as one well-mixed volume of air. */
export interface AirRoom {
  readonly volumeM3: number;
  /** Fresh air in and room air out, m3/min; 0 is a closed room. */
  readonly airflowM3PerMin: number;
  /** 1 for perfect mixing, up to 10 for poor: only airflow / mixingFactor counts as carrying vapour off. */
  readonly mixingFactor: number;
}

/**
 * Part of a coat's vapour that comes off at a rate falling by a fixed share per minute. `amount` is in any unit U (mg,
 * or m3 of air filled to a limit); concentrations then come out in U per m3.
 */
export interface EmissionPhase {
  readonly amount: number;
  /** First-order decay, per minute: 0.01 means one percent of what is left comes off each minute. */
  readonly decayPerMin: number;
}

/** One coat as the room sees it: nothing before startMinute, then its phases, all starting together. */
export interface RoomSource {
  readonly startMinute: number;
  readonly phases: readonly EmissionPhase[];
}

/**
 * What share of the room's air is replaced per minute, as far as vapour is concerned?
 *
 * @param room volume m3, airflow m3/min, mixing factor
 * @returns airflow / (mixing factor x volume), per minute
 *
 * Source: V dC/dt = E - (Q / K) C, the growth and decay equation of the University of Toledo industrial ventilation
 * notes with their Q' = Q / K. Valid range: volume above 0, airflow from 0, mixing factor 1 to 10; else a RangeError.
 * Departures: none.
 * Example: 5 m3/min through 50 m3 with K = 2: 0.05 per minute.
 */
export function exchangePerMin(room: AirRoom): number {
  requireWithin('volumeM3', room.volumeM3, Number.MIN_VALUE, Infinity, 'm3');
  requireWithin('airflowM3PerMin', room.airflowM3PerMin, 0, Infinity, 'm3/min');
  requireWithin('mixingFactor', room.mixingFactor, MIXING_FACTOR_MIN, MIXING_FACTOR_MAX, '');
  return room.airflowM3PerMin / (room.mixingFactor * room.volumeM3);
}

/**
 * Can these sources be reckoned with?
 *
 * @param sources coats with start minute, amounts and decays per minute
 * @returns the same sources
 * @throws RangeError for an amount below 0, a decay not above 0, or a start that is not a number from 0
 *
 * Source: definition. Valid range: as above. Departures: none.
 * Example: a phase of 225 000 mg at 0.01 per minute is fine.
 */
export function requireSources(sources: readonly RoomSource[]): readonly RoomSource[] {
  for (const source of sources) {
    requireWithin('startMinute', source.startMinute, 0, Infinity, 'min');
    for (const phase of source.phases) {
      requireWithin('amount', phase.amount, 0, Infinity, '');
      requireWithin('decayPerMin', phase.decayPerMin, Number.MIN_VALUE, Infinity, 'per minute');
    }
  }
  return sources;
}
