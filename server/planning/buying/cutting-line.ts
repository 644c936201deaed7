import { COVER_TOLERANCE } from '../packs/constants.ts';
import { usablePacks } from '../packs/usable-packs.ts';
import type { BuyLine } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { ProjectInput } from '../project-input.ts';
import { buyLine } from './buy-line.ts';
import { packBasisProblems } from './line-problems.ts';
import type { StockPurchase } from './stock-purchases.ts';

/**
 * The buy line of rolls, sheets or boards, bought whole by their cutting plan.
 *
 * @returns the line: what is cut from stock on hand is taken off the need; left over are unused lengths of rolls
 *   (offcuts of sheets and boards are shown with the cutting plan). Rolls without a price are a problem here; sheets and
 *   boards without one are reported with their cutting plan.
 *
 * Source: definition; the packs are the cutting plan's own.
 */
export function cuttingLine(
  purchase: StockPurchase,
  input: ProjectInput,
): { readonly line: BuyLine; readonly problems: readonly Problem[] } {
  const { product, need, fromStock, packs, from, needName } = purchase;
  const { currency } = input.settings;
  const rest = need === null ? null : need - fromStock;
  const toBuy = rest !== null && rest <= COVER_TOLERANCE ? 0 : rest;
  const bought = packs.reduce((sum, { pack, count }) => sum + pack.amount * count, 0);
  const short = toBuy !== null && packs.length > 0 && bought + COVER_TOLERANCE < toBuy;
  const line = buyLine({
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
    notes: short ? ['Some of the need fits none of the lengths sold and is not bought.'] : [],
    currency,
    catalogue: input.catalogue,
  });
  const unpriced = product.kind === 'banding' && packs.length > 0 && line.cost.value === null;
  const { basis } = usablePacks(
    packs.map(({ pack }) => pack),
    currency,
  );
  return { line, problems: unpriced ? packBasisProblems(product, basis, currency) : [] };
}
