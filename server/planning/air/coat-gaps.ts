import type { AirCoat, AirGap } from './air-check-input.ts';
import { sharesFit } from './solvent-shares.ts';

/**
 * What is missing about one coat?
 *
 * @param coat litres L, VOC g/L and solvents, with null for what is not known
 * @returns its gaps: litres, voc, solvents, solvent-shares; empty when all is known or nothing evaporates
 *
 * Source: a rule of ours, see airGaps. Valid range: any coat. Departures: none.
 * Example: solvents of 70 and 40 %: one gap with field `solvent-shares`.
 */
export function coatGaps(coat: AirCoat): AirGap[] {
  const gaps: AirGap[] = [];
  const ask = (field: AirGap['field'], message: string, wayOut: string) =>
    gaps.push({ field, coatId: coat.id, substanceId: null, message, wayOut });
  if (coat.litres === null)
    ask(
      'litres',
      `The litres of "${coat.name}" are not known.`,
      'Complete the finish recipe the coat belongs to.',
    );
  if (coat.vocGPerL === null)
    ask(
      'voc',
      `How much of "${coat.name}" evaporates is not known.`,
      'Enter the actual VOC in grams per litre (not the "less water" figure) from its safety data sheet, section 9.',
    );
  if (coat.litres === 0 || coat.vocGPerL === 0) return gaps;
  if (coat.solvents.length === 0)
    ask(
      'solvents',
      `Which solvents evaporate from "${coat.name}" is not known.`,
      'Choose them from its safety data sheet, section 3; their shares may stay empty.',
    );
  if (!sharesFit(coat.solvents)) {
    const shares = coat.solvents.flatMap(({ shareOfVoc }) =>
      shareOfVoc === null ? [] : [`${Math.round(shareOfVoc * 1000) / 10} %`],
    );
    ask(
      'solvent-shares',
      `The solvent shares of "${coat.name}" (${shares.join(', ')}) cannot be right.`,
      'Enter shares that add up to 100 % at most, and leave those empty that are not known.',
    );
  }
  return gaps;
}
