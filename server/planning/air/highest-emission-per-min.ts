import { type RoomSource, requireSources } from './air-room.ts';
import { emissionOf, laidPhases } from './room-kernel.ts';

/**
 * How fast does vapour come off at the worst moment?
 *
 * @param sources coats, amounts in U
 * @returns highest emission of all coats together, U per minute
 *
 * Source: first-order decay E(t) = M k e^(-kt) per phase; emission only jumps up at the start of a coat and falls after
 * it, so the highest value is at one of the starts. Definition, exact. Valid range: as requireSources. Departures: none.
 * Example: 5000 mg at 0.01 per minute alone: 50 mg/min.
 */
export function highestEmissionPerMin(sources: readonly RoomSource[]): number {
  const phases = laidPhases(requireSources(sources));
  return phases.reduce((highest, { startMinute }) => Math.max(highest, emissionOf(phases, startMinute)), 0);
}
