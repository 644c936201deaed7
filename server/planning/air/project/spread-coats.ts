import { requireWithin } from '../../climate/require-within.ts';
import type { AirCoatOfTask } from './air-coats.ts';

/**
 * How would coats lie in time if each were laid in smaller parts, one after the other?
 *
 * @param coats liquids of coats; those of one task stay together
 * @param parts how many parts each coat is laid in
 * @param gapMin minutes from the start of one part to the start of the next
 * @returns the same liquids, litres shared out evenly; the first part starts at minute 0
 *
 * Source: definition. Valid range: parts from 1, a gap above 0; else a RangeError. Departures: drying and working hours
 * are the calendar's business. Example: 2 coats in 2 parts, 60 min apart: starts at 0, 60, 120 and 180.
 */
export function spreadCoats(coats: readonly AirCoatOfTask[], parts: number, gapMin: number): AirCoatOfTask[] {
  requireWithin('parts', parts, 1, Infinity, '');
  requireWithin('gapMin', gapMin, Number.MIN_VALUE, Infinity, 'min');
  const tasks = [...new Set(coats.map(({ task }) => task.id))];
  return tasks.flatMap((id, place) => {
    const liquids = coats.filter(({ task }) => task.id === id);
    return Array.from({ length: parts }, (_, part) =>
      liquids.map((coat) => ({
        ...coat,
        id: `${coat.id}~${part}`,
        startMinute: (place * parts + part) * gapMin,
        litres: coat.litres === null ? null : coat.litres / parts,
      })),
    ).flat();
  });
}
