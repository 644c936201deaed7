import { taxOnLine } from '../buying/tax-on-line.ts';
import type { OrderLine, Receipt } from '../project-input.ts';
import { MOST_AMOUNT_MINOR } from './constants.ts';

/** One order line in money, whole minor units. Null where no price is known, or where it cannot be reckoned with. */
export interface LineMoney {
  readonly line: OrderLine;
  /** Packs ordered and not sent back. */
  readonly kept: number;
  readonly returned: number;
  /** Percent; null where none is set: then tax is 0 and the amounts are before tax. */
  readonly taxPercent: number | null;
  readonly goodsMinor: number | null;
  readonly taxMinor: number | null;
  /** Goods and tax of what is kept. */
  readonly totalMinor: number | null;
  /** The same of what was ordered, before anything was sent back. */
  readonly grossMinor: number | null;
  /** Total above what it would be at the agreed prices. */
  readonly priceChangeMinor: number | null;
}

/**
 * What does one order line come to?
 *
 * goods = packs kept x price of one (as charged, else as agreed); tax = goods x rate, rounded half up; total = goods + tax
 *
 * @param receipts of this line; those of kind `returned` lessen the packs kept, not below none
 * @param taxPercent the project's rate, for a line without its own
 * @returns whole minor units
 *
 * Source: common practice, no source (tax per line, commercial rounding).
 * Example: 3 packs at 1999, one sent back, 8 %: goods 3998, tax 319.84 rounded 320, total 4318.
 */
export function lineMoney(
  line: OrderLine,
  receipts: readonly Receipt[],
  taxPercent: number | null,
): LineMoney {
  const returned = receipts
    .filter(({ kind }) => kind === 'returned')
    .reduce((packs, { count }) => packs + count, 0);
  const kept = Math.max(0, line.count - returned);
  const rate = line.taxPercent ?? taxPercent;
  const price = line.invoicedPriceMinor ?? line.unitPriceMinor;
  const at = (packs: number, one: number | null) => packsWithTax(packs, one, rate);
  const now = at(kept, price);
  const agreed = line.invoicedPriceMinor === null ? now : at(kept, line.unitPriceMinor);
  return {
    line,
    kept,
    returned,
    taxPercent: rate,
    goodsMinor: now?.goodsMinor ?? null,
    taxMinor: now?.taxMinor ?? null,
    totalMinor: now?.totalMinor ?? null,
    grossMinor: at(line.count, price)?.totalMinor ?? null,
    priceChangeMinor: now === null || agreed === null ? null : now.totalMinor - agreed.totalMinor,
  };
}

/** Goods, tax and both of so many packs; null where the price is not known, or the amount is beyond reckoning. */
export function packsWithTax(
  packs: number,
  priceMinor: number | null,
  taxPercent: number | null,
): { readonly goodsMinor: number; readonly taxMinor: number; readonly totalMinor: number } | null {
  if (priceMinor === null) return null;
  const goodsMinor = packs * priceMinor;
  if (!(goodsMinor >= 0 && goodsMinor <= MOST_AMOUNT_MINOR)) return null;
  const taxMinor = taxPercent === null ? 0 : taxOnLine({ lineMinor: goodsMinor, taxPercent });
  return { goodsMinor, taxMinor, totalMinor: goodsMinor + taxMinor };
}
