import type { Product } from '../../product.ts';
import type { OnHand, ProjectInput } from '../../project-input.ts';
import type { StockPiece } from '../buying-plan.ts';
import { groupedBy } from '../grouped-by.ts';
import { deliveredParts } from '../orders/delivered-parts.ts';
import type { CoatUse } from './coat-uses.ts';
import { goodUntil } from './good-until.ts';
import { type StockPart, type TakenAmount, takeFromStock } from './take-from-stock.ts';

/** Everything there is and was of one product, in its unit. */
export interface ProductStock {
  readonly pieces: readonly StockPiece[];
  /** Leftovers that are good, and what was used of all leftovers. */
  readonly leftovers: number;
  /** Left of leftovers and deliveries that are past their date. */
  readonly expired: number;
  /** Of which of deliveries. */
  readonly expiredDelivered: number;
  /** Delivered and not sent back. */
  readonly received: number;
  /** By coats, by hand, and in place of others. */
  readonly used: number;
  readonly usedByHand: number;
  /** Used beyond all that was ever entered, of it and of what may stand in for it. */
  readonly beyond: number;
  /** Of what was used of it, what was really taken from products that may stand in for it. */
  readonly standIn: number;
  /** Good and here. */
  readonly now: number;
}

type Part = StockPart & Pick<StockPiece, 'place' | 'batch' | 'openedOn'> & { readonly productId: string };

/**
 * How much of each product is in the shop on one day?
 *
 * @param input what is on hand, deliveries and what was taken by hand; rows that cannot be counted are left out
 * @param uses of finished coats
 * @param today YYYY-MM-DD; what was good until an earlier day is there, but is not counted
 * @returns per product that is or was there, in its unit
 *
 * Source: definition; `takeFromStock` says what is taken first. Valid range: any. Departures: none.
 * Example: a leftover of 0.7 L, 0.4 L used on the 5th, good until the 10th: on the 11th 0.3 L is past its date, and nothing counts.
 */
export function productStocks(
  input: ProjectInput,
  uses: readonly CoatUse[],
  today: string,
): ReadonlyMap<string, ProductStock> {
  const products = new Map(input.catalogue.products.map((product) => [product.id, product]));
  const parts = groupedBy(
    [
      ...input.onHand.flatMap((row) => leftoverPart(row, products.get(row.productId))),
      ...deliveredParts(input.orderLines, input.receipts, products).map(
        (part): Part => ({ ...part, openedOn: '' }),
      ),
    ],
    ({ productId }) => productId,
  );
  const byHand = groupedBy(
    input.stockUses.filter(({ amount }) => amount > 0 && Number.isFinite(amount)),
    ({ productId }) => productId,
  );
  const byCoat = groupedBy(uses, ({ productId }) => productId);
  const ids = new Set([...parts.keys(), ...byHand.keys(), ...byCoat.keys()]);
  ids.delete('');
  const takenOf = (id: string): readonly TakenAmount[] => [
    ...(byHand.get(id) ?? []).map(({ date, amount }) => ({ date, amount })),
    ...(byCoat.get(id) ?? []).map(({ date, used }) => ({ date, amount: used })),
  ];
  const stock = (id: string, more: readonly TakenAmount[] = []): ProductStock =>
    stockOf(parts.get(id) ?? [], [...takenOf(id), ...more], sum(byHand.get(id) ?? []), today);
  const stocks = new Map([...ids].map((id) => [id, stock(id)]));

  // What was used of a product beyond its own stock was taken from what may stand in for it, where there is any.
  const taken = new Map<string, TakenAmount[]>();
  for (const { productId, substituteId } of input.substitutes) {
    const own = stocks.get(productId);
    const stand = stocks.get(substituteId);
    if (own === undefined || stand === undefined || productId === substituteId) continue;
    if (products.get(productId)?.unit !== products.get(substituteId)?.unit) continue;
    const amount = Math.min(own.beyond, stand.now);
    if (amount === 0) continue;
    taken.set(substituteId, [...(taken.get(substituteId) ?? []), { date: today, amount }]);
    stocks.set(substituteId, { ...stock(substituteId, taken.get(substituteId)), standIn: stand.standIn });
    stocks.set(productId, { ...own, beyond: clean(own.beyond - amount), standIn: own.standIn + amount });
  }
  return stocks;
}

function stockOf(
  parts: readonly Part[],
  taken: readonly TakenAmount[],
  usedByHand: number,
  today: string,
): ProductStock {
  const { left, beyond } = takeFromStock(parts, taken);
  const pieces = parts.map((part, at): StockPiece => {
    const { from, id, place, batch, openedOn, goodUntil: last } = part;
    const expired = last !== null && last < today;
    return { from, id, amount: clean(left[at] ?? 0), place, batch, openedOn, goodUntil: last, expired };
  });
  const total = (which: (piece: StockPiece) => boolean): number => sum(pieces.filter(which));
  const leftoversAtFirst = sum(parts.filter(({ from }) => from === 'onHand'));
  const expired = total((piece) => piece.expired);
  const expiredDelivered = total((piece) => piece.expired && piece.from === 'receipts');
  return {
    pieces,
    leftovers: clean(leftoversAtFirst - (expired - expiredDelivered)),
    expired,
    expiredDelivered,
    received: sum(parts.filter(({ from }) => from === 'receipts')),
    used: sum(taken),
    usedByHand,
    beyond: clean(beyond),
    standIn: 0,
    now: total((piece) => !piece.expired),
  };
}

function leftoverPart(row: OnHand, product: Product | undefined): readonly Part[] {
  const amount = row.amount * row.count;
  if (product === undefined || !(amount > 0 && Number.isFinite(amount))) return [];
  const { place = '', batch = '', openedOn = '' } = row;
  return [
    {
      from: 'onHand',
      id: row.id,
      productId: row.productId,
      amount,
      arrivedOn: '',
      opened: openedOn !== '',
      goodUntil: goodUntil(row, product),
      place,
      batch,
      openedOn,
    },
  ];
}

function sum(rows: readonly { readonly amount: number }[]): number {
  return rows.reduce((total, { amount }) => total + amount, 0);
}

/** Dust of floating-point sums is nothing. */
function clean(amount: number): number {
  return amount < DUST ? 0 : amount;
}
const DUST = 1e-9;
