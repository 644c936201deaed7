import { type Figure, figure } from '../figure.ts';
import { evidenceText } from '../finish/evidence-text.ts';
import { type CountedPack, pricedPacks } from './priced-packs.ts';

/**
 * What do the packs of one line cost?
 *
 * @param chosen packs and whole counts; empty when nothing is to be bought
 * @param currency ISO 4217 code the project reckons in
 * @returns whole minor units without tax; null as soon as one price is not known in that currency
 *
 * Source: definition, cost = sum of count x price; each price carries its own evidence.
 * Example: one gallon at 5999 and one quart at 1899: 7898.
 */
export function packsCost(chosen: readonly CountedPack[], currency: string): Figure {
  const packs = pricedPacks(chosen, currency);
  const unpriced = packs.filter(({ lineMinor }) => lineMinor === null);
  const evidence = new Map(chosen.map(({ pack }) => [pack.id, evidenceText(pack)]));
  return figure(
    unpriced.length > 0 ? null : packs.reduce((sum, { lineMinor }) => sum + (lineMinor ?? 0), 0),
    'minor',
    {
      rule: 'cost = sum of packs x price, without tax',
      inputs: packs.map(({ id, count, label, lineMinor }) => ({
        name: `${count} x ${label}`,
        value: lineMinor,
        unit: 'minor',
        source: evidence.get(id) ?? '',
      })),
      ...(unpriced.length === 0
        ? {}
        : {
            notes: [`No price in ${currency} is known for ${unpriced.map(({ label }) => label).join(', ')}.`],
          }),
    },
  );
}
