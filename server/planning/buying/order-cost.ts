import { type Figure, figure } from '../figure.ts';
import type { OrderPack } from './buying-plan.ts';
import { packsCost } from './packs-cost.ts';
import { type CountedPack, pricedPacks } from './priced-packs.ts';

const RULE = 'cost = sum of packs x price, without tax';

/**
 * How do chosen packs read on an order?
 *
 * @param productId whose packs they are
 * @param currency ISO 4217 code the project reckons in
 * @returns largest first, prices in whole minor units without tax
 *
 * Source: `pricedPacks`. Valid range: any. Departures: none.
 */
export function orderPacks(
  chosen: readonly CountedPack[],
  productId: string | null,
  currency: string,
): readonly OrderPack[] {
  return pricedPacks(chosen, currency).map(({ id, ...pack }) => ({ packId: id, productId, ...pack }));
}

/**
 * What does an order line cost?
 *
 * @param chosen packs of the catalogue; empty for a line added by hand, or when nothing is ordered
 * @param packs the same as they are ordered; null when it cannot be said what to order
 * @returns whole minor units without tax; null when that or a price is not known
 *
 * Source: definition, cost = sum of count x price. Valid range: any. Departures: none.
 */
export function orderCost(
  chosen: readonly CountedPack[],
  packs: readonly OrderPack[] | null,
  currency: string,
): Figure {
  if (packs === null)
    return figure(null, 'minor', { rule: RULE, inputs: [], notes: ['Not known; the problems say why.'] });
  if (chosen.length > 0) return packsCost(chosen, currency);
  const unpriced = packs.some(({ lineMinor }) => lineMinor === null);
  const sum = packs.reduce((total, { lineMinor }) => total + (lineMinor ?? 0), 0);
  return figure(unpriced ? null : sum, 'minor', {
    rule: RULE,
    inputs: packs.map(({ label, count, lineMinor }) => ({
      name: `${count} x ${label}`,
      value: lineMinor,
      unit: 'minor',
    })),
    ...(unpriced ? { notes: ['Its price is not known.'] } : {}),
  });
}
