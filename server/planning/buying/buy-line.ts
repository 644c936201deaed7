import { type Figure, figure, type WorkingInput } from '../figure.ts';
import { CATEGORY_OF_KIND } from '../ledger/constants.ts';
import type { BuyLine } from '../plan-output.ts';
import type { Catalogue, Product } from '../product.ts';
import { lineSupplier } from './line-supplier.ts';
import { packsCost } from './packs-cost.ts';
import { type CountedPack, pricedPacks } from './priced-packs.ts';

export interface LineAmounts {
  /** In the product's unit; null is unknown. */
  readonly need: number | null;
  readonly onHand: number;
  readonly toBuy: number | null;
  readonly leftover: number | null;
  readonly needInputs: readonly WorkingInput[];
  readonly onHandInputs: readonly WorkingInput[];
}

/**
 * One line of the buy list for a catalogue product.
 *
 * @param amounts need, stock and leftover in the product's unit
 * @param packs what is to be bought; empty both when nothing is and when it cannot be said (`toBuy` tells which)
 * @param fewest the plan with the fewest packs; empty when it is the same
 * @returns the line; its cost is null when what to buy, or a price, is not known
 *
 * Source: definition; nothing is chosen here.
 */
export function buyLine({
  product,
  amounts,
  packs,
  fewest,
  notes,
  currency,
  catalogue,
}: {
  readonly product: Product;
  readonly amounts: LineAmounts;
  readonly packs: readonly CountedPack[];
  readonly fewest: readonly CountedPack[];
  readonly notes: readonly string[];
  readonly currency: string;
  readonly catalogue: Catalogue;
}): BuyLine {
  const path = `buy/lines/${product.id}`;
  const unit = product.unit;
  const supplier = lineSupplier(packs, catalogue);
  const unknown = amounts.toBuy === null || (amounts.toBuy > 0 && packs.length === 0);
  const cost = unknown
    ? unknownFigure('minor', 'cost = sum of packs x price, without tax')
    : packsCost(packs, currency);
  const bought = packs.reduce((sum, { pack, count }) => sum + pack.amount * count, 0);
  const amount = (rule: string, value: number | null, inputs: readonly WorkingInput[]): Figure =>
    value === null ? unknownFigure(unit, rule) : figure(value, unit, { rule, inputs });
  return {
    id: product.id,
    productId: product.id,
    name: product.name,
    category: CATEGORY_OF_KIND[product.kind],
    supplierId: supplier.supplierId,
    supplierName: supplier.supplierName,
    unit,
    need: amount('need of the project', amounts.need, amounts.needInputs),
    onHand: amount('on hand = sum of amount x count', amounts.onHand, amounts.onHandInputs),
    toBuy: amount('to buy = need - on hand, not below 0', amounts.toBuy, [
      { name: 'need', value: amounts.need, unit, from: `${path}/need` },
      { name: 'on hand', value: amounts.onHand, unit, from: `${path}/onHand` },
    ]),
    packs: pricedPacks(packs, currency),
    boughtAmount: amount(
      'bought = sum of packs x amount',
      unknown ? null : bought,
      packs.map(({ pack, count }) => ({
        name: `${count} x ${pack.label}`,
        value: pack.amount * count,
        unit,
      })),
    ),
    leftover: amount('left over = bought + on hand - need', unknown ? null : amounts.leftover, [
      { name: 'bought', value: bought, unit, from: `${path}/boughtAmount` },
      { name: 'on hand', value: amounts.onHand, unit, from: `${path}/onHand` },
      { name: 'need', value: amounts.need, unit, from: `${path}/need` },
    ]),
    cost,
    fewestPacks: pricedPacks(fewest, currency),
    fewestPacksCost:
      fewest.length > 0
        ? packsCost(fewest, currency)
        : figure(cost.value, 'minor', {
            rule: 'the cheapest plan already has the fewest packs',
            inputs: [{ name: 'cost', value: cost.value, unit: 'minor', from: `${path}/cost` }],
          }),
    notes: [...supplier.notes, ...notes],
  };
}

function unknownFigure(unit: Figure['unit'], rule: string): Figure {
  return figure(null, unit, { rule, inputs: [], notes: ['Not known; the problems say why.'] });
}
