import type { AirCheckInput, AirGap } from './air-check-input.ts';
import { coatGaps } from './coat-gaps.ts';
import { presentSolvents } from './solvent-shares.ts';
import { substanceGaps } from './substance-gaps.ts';

/**
 * What must still be found out before the air can be judged?
 *
 * @param input the room and its coats, with null for what is not known
 * @returns one gap per missing figure, room first, then coat by coat; each with a sentence and a way out
 *
 * Source: a rule of ours: an unknown figure is asked for, never taken as harmless. Valid range: any input. Departures: a
 * substance in several coats is asked for once; a coat that evaporates nothing asks for no solvents.
 * Example: no airflow entered: one gap with field `airflow`.
 */
export function airGaps(input: AirCheckInput): AirGap[] {
  const gaps: AirGap[] = [...(input.alsoMissing ?? [])];
  const nowhere = { coatId: null, substanceId: null };
  if (input.volumeM3 === null)
    gaps.push({
      field: 'room-volume',
      ...nowhere,
      message: 'The volume of the room is not known.',
      wayOut: 'Measure the room and enter its length, width and height.',
    });
  if (input.airflowM3PerMin === null)
    gaps.push({
      field: 'airflow',
      ...nowhere,
      message: 'It is not known how much fresh air the room gets.',
      wayOut: "Enter the fan's airflow or the air changes per hour, 0 for a closed room.",
    });
  const asked = new Set<string>();
  for (const coat of input.coats) {
    gaps.push(...coatGaps(coat));
    if (coat.litres === 0 || coat.vocGPerL === 0) continue;
    for (const { substance } of presentSolvents(coat.solvents)) {
      if (asked.has(substance.id)) continue;
      asked.add(substance.id);
      gaps.push(...substanceGaps(substance, coat.id));
    }
  }
  return gaps;
}
