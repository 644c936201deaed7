import { COVER_TOLERANCE } from '../packs/constants.ts';
import type { BuyLine } from '../plan-output.ts';
import type { ProjectInput } from '../project-input.ts';
import { buyLine } from './buy-line.ts';
import type { StockPurchase } from './stock-purchases.ts';

/**
 * The buy line of rolls, sheets or boards, bought whole by their cutting plan.
 *
 * @returns the line: what is cut from stock on hand is taken off the need; left over are unused lengths of rolls
 *   (offcuts of sheets and boards are shown with the cutting plan)
 *
 * Source: definition; the packs are the cutting plan's own. Their problems are reported with the cutting plan.
 */
export function cuttingLine(purchase: StockPurchase, input: ProjectInput): BuyLine {
  const { product, need, fromStock, packs, from, needName } = purchase;
  const toBuy = need === null ? null : need - fromStock <= COVER_TOLERANCE ? 0 : need - fromStock;
  const bought = packs.reduce((sum, { pack, count }) => sum + pack.amount * count, 0);
  return buyLine({
    product,
    amounts: {
      need,
      onHand: fromStock,
      toBuy,
      leftover: toBuy === null ? null : Math.max(0, bought - toBuy),
      needInputs: [{ name: needName, value: need, unit: product.unit, from }],
      onHandInputs: [{ name: 'cut from stock on hand', value: fromStock, unit: product.unit }],
    },
    packs,
    fewest: [],
    notes: [],
    currency: input.settings.currency,
    catalogue: input.catalogue,
  });
}
