import type { AirGap } from './air-check-input.ts';
import type { AirSubstance } from './air-substance.ts';

/**
 * What is missing about one vapour?
 *
 * @param substance molar mass, LEL and exposure limit, with null for what is not known
 * @param coatId the first coat it is in
 * @returns its gaps: molar-mass, lel, limit; empty when all three are known
 *
 * Source: a rule of ours, see airGaps. Valid range: any substance. Departures: missing short-term and ceiling limits are
 * no gap: many substances have none.
 * Example: mineral spirits, whose LEL NIOSH prints as "Unknown": one gap with field `lel`.
 */
export function substanceGaps(substance: AirSubstance, coatId: string): AirGap[] {
  const gaps: AirGap[] = [];
  const ask = (field: AirGap['field'], figure: string, wayOut: string) =>
    gaps.push({
      field,
      coatId,
      substanceId: substance.id,
      message: `The ${figure} of ${substance.name} is not known.`,
      wayOut,
    });
  if (substance.molarMassGPerMol === null)
    ask('molar-mass', 'molar mass', 'Enter it in grams per mole; a handbook or the supplier can name it.');
  if (substance.lelPercent === null)
    ask(
      'lel',
      'lower explosive limit',
      "Enter it in percent by volume from the product's safety data sheet, section 9.",
    );
  if (substance.limitMgPerM3 === null)
    ask('limit', 'exposure limit', "Enter it from the product's safety data sheet, section 8.");
  return gaps;
}
