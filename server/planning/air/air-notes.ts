import type { AirCheckInput, AirCoat } from './air-check-input.ts';
import { presentSolvents, shareLeft } from './solvent-shares.ts';

/**
 * Which assumptions stand behind an air check?
 *
 * @param input the room and its coats
 * @returns sentences, the general ones first, then coat by coat
 *
 * Source: a rule of ours: what is assumed is said. Valid range: any input. Departures: none.
 * Example: a coat of unknown shares: "... all of it is taken to be the worst of these for each limit."
 */
export function airNotes(input: AirCheckInput): string[] {
  const notes = [
    `The room is taken as one volume of air, mixed with a factor of ${input.mixingFactor} (1 is perfect, 10 is poor).`,
    'Each coat is taken to be laid all at once at its start, which overstates the peak.',
    input.healthBasis === 'averages'
      ? 'Shift-long exposure limits are compared with the highest 8-hour average.'
      : 'Shift-long exposure limits are held at every moment, which is stricter than their 8-hour meaning.',
  ];
  return [...notes, ...input.coats.flatMap(coatNotes)];
}

function coatNotes(coat: AirCoat): string[] {
  const notes: string[] = [];
  if (coat.emission.kind === 'all-at-once')
    notes.push(
      `How fast "${coat.name}" dries is not known: all its solvent is taken to be in the air at once. Enter the label's touch-dry time for a better figure.`,
    );
  if (coat.emission.kind === 'touch-dry')
    notes.push(
      `Of the solvent in "${coat.name}", 95 % is taken to be in the air by its touch-dry time of ${coat.emission.touchDryMin} min: our assumption, no published figure was found.`,
    );
  const present = presentSolvents(coat.solvents);
  const left = shareLeft(coat.solvents);
  if (present.length === 0 || left === 0) return notes;
  const unnamed = present.filter((solvent) => solvent.shareOfVoc === null);
  const names = (unnamed.length > 0 ? unnamed : present).map(({ substance }) => substance.name).join(', ');
  const part = left === 1 ? 'The solvent shares' : `${Math.round(left * 1000) / 10} % of the solvent`;
  notes.push(
    `${part} of "${coat.name}" ${left === 1 ? 'are' : 'is'} not known: all of it is taken to be the worst of these for each limit: ${names}.`,
  );
  return notes;
}
