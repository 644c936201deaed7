import { type AirRoom, exchangePerMin, type RoomSource, requireSources } from './air-room.ts';
import { emissionOf, inAirOf, laidPhases } from './room-kernel.ts';
import { zeroBetween } from './zero-between.ts';

export interface RoomPeak {
  /** Highest concentration, U/m3. */
  readonly value: number;
  /** When it is reached; null in a closed room, where it is approached for ever. */
  readonly minute: number | null;
}

/**
 * How high does the vapour get in each stretch between one coat and the next?
 *
 * Method: between coats the concentration is a sum of exponentials. Ordered by decay, the phases slower than the air
 * exchange come first with coefficients above 0 and the faster ones last with coefficients below 0; only the exchange
 * term itself may have either sign. So the coefficients change sign at most once, and by Descartes' rule (for sums of
 * exponentials: Laguerre, 1883, from memory) the derivative has at most one zero. Each stretch therefore rises to one
 * top and falls, or only does one of the two, and the zero of the derivative is the top.
 *
 * @param room volume m3, airflow m3/min, mixing factor
 * @param sources coats, amounts in U; empty gives no peaks
 * @returns one peak per stretch, in time order; coats that start together share a stretch; the last one has no end
 *
 * Source: derivative of the closed solution in roomConcentration; algebra of ours. Valid range: as roomConcentration.
 * Departures: none.
 * Example: the one coat of roomConcentration peaks at ln(N/k)/(N-k) = 2.2314 h with 54.61 mg/m3.
 */
export function roomPeaks(room: AirRoom, sources: readonly RoomSource[]): RoomPeak[] {
  const exchange = exchangePerMin(room);
  const phases = laidPhases(requireSources(sources));
  const starts = [...new Set(sources.map((source) => source.startMinute))];
  starts.sort((one, other) => one - other);
  return starts.map((start, index) => {
    const laid = phases.filter(({ startMinute }) => startMinute <= start);
    const value = (minute: number) => inAirOf(laid, exchange, minute) / room.volumeM3;
    const climb = (minute: number) => emissionOf(laid, minute) - exchange * inAirOf(laid, exchange, minute);

    let low = start;
    if (!(climb(low) > 0)) return { value: value(low), minute: low };
    const next = starts[index + 1];
    if (next === undefined && exchange === 0)
      return { value: laid.reduce((sum, { amount }) => sum + amount, 0) / room.volumeM3, minute: null };
    let high = next ?? start + 1;
    if (next !== undefined) {
      if (climb(high) > 0) return { value: value(high), minute: high };
    } else {
      for (; climb(high) > 0; high += high - start) low = high;
    }
    const top = zeroBetween(climb, low, high);
    return { value: value(top), minute: top };
  });
}

/**
 * How high does the vapour get at all, and when?
 *
 * @param room volume m3, airflow m3/min, mixing factor
 * @param sources coats, amounts in U
 * @returns the highest of roomPeaks; value 0 at minute 0 without sources
 *
 * Source: definition, by roomPeaks. Valid range: as roomConcentration. Departures: none.
 * Example: 100 mg all in the air of a closed room of 10 m3 in the end: 10 mg/m3, approached and not reached.
 */
export function roomPeak(room: AirRoom, sources: readonly RoomSource[]): RoomPeak {
  return roomPeaks(room, sources).reduce((best, peak) => (peak.value > best.value ? peak : best), {
    value: 0,
    minute: 0,
  });
}
