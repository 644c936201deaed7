import { type AirRoom, exchangePerMin, type RoomSource, requireSources } from './air-room.ts';
import { inAirOf, laidPhases } from './room-kernel.ts';

/**
 * How much vapour is in a cubic metre of the room's air at a minute?
 *
 * @param room volume m3, airflow m3/min, mixing factor
 * @param sources coats, amounts in U
 * @param minute the minute asked about; before the first coat the answer is 0
 * @returns concentration, U/m3
 *
 * Source: closed solution of V dC/dt = E(t) - (Q/K) C for E(t) = M k e^(-kt): with N = Q/(KV),
 * C = (M k / V) (e^(-kt) - e^(-Nt)) / (N - k), summed over coats and phases; algebra of ours, checked against numerical
 * integration. Valid range: those of exchangePerMin and requireSources; else a RangeError. Departures: the quotient is a
 * divided difference of the exponential, so N = k needs no special case and N near k loses no digits. Air is one well
 * mixed volume; a coat is taken to be laid all at its start minute, which overstates the peak.
 * Example: 5000 mg, k = 0.4 per hour, 30 m3, N = 0.5 per hour: 54.61 mg/m3 after 2.2314 h.
 */
export function roomConcentration(room: AirRoom, sources: readonly RoomSource[], minute: number): number {
  const exchange = exchangePerMin(room);
  return inAirOf(laidPhases(requireSources(sources)), exchange, minute) / room.volumeM3;
}
