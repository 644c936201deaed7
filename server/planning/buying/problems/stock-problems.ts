import { formatAmount } from '../../display/format-amount.ts';
import { formatVolume } from '../../display/format-volume.ts';
import { MAX_AMOUNT } from '../../finish/constants.ts';
import type { Problem } from '../../problem.ts';
import { DOUBTFUL_LITRES_FACTOR } from '../constants.ts';
import { dateText } from '../dates/date-text.ts';
import type { PurchaseFacts } from './purchase-problems.ts';

/**
 * What is doubtful about the stock?
 *
 * @returns leftovers past their date, more used than was ever there, amounts that cannot be counted, and measured litres far from
 *   the reckoned ones
 *
 * Source: definition; what counts as far is DOUBTFUL_LITRES_FACTOR. Valid range: any. Departures: none.
 */
export function stockProblems({ input, stocks, uses }: PurchaseFacts): readonly Problem[] {
  const products = new Map(input.catalogue.products.map((product) => [product.id, product]));
  const problems: Problem[] = [];
  for (const [id, { pieces, beyond }] of stocks) {
    const product = products.get(id);
    if (product === undefined) continue;
    for (const piece of pieces)
      if (piece.expired && piece.amount > 0 && piece.goodUntil !== null)
        problems.push({
          code: 'on-hand-expired',
          severity: 'note',
          at: { table: piece.from, id: piece.id, field: piece.from === 'onHand' ? 'bestBefore' : null },
          message: `${formatAmount(piece.amount, product.unit, input.settings)} of "${product.name}" was good until ${dateText(piece.goodUntil)} and is not counted.`,
          wayOut:
            piece.from === 'onHand'
              ? 'Try it on an offcut; if it is still good, give it a later date.'
              : 'Try it on an offcut; if it is still good, give the product a longer shelf life in the catalogue.',
        });
    if (beyond > BEYOND_NOTED)
      problems.push({
        code: 'stock-missing',
        severity: 'note',
        at: { table: 'products', id, field: null },
        message: `${formatAmount(beyond, product.unit, input.settings)} more of "${product.name}" was used than was ever entered as stock.`,
        wayOut: 'Enter the can it came from under what is on hand, or the delivery.',
      });
  }
  for (const { id, productId, amount } of input.stockUses)
    if (!products.has(productId))
      problems.push({
        code: 'stock-use-invalid',
        severity: 'error',
        at: { table: 'stockUses', id, field: 'productId' },
        message:
          productId === ''
            ? 'Something was taken from stock, but no product is chosen.'
            : `"${productId}", which was taken from stock, is not in the catalogue.`,
        wayOut: 'Choose the product, or delete the line.',
      });
    else if (!(amount >= 0 && amount <= MAX_AMOUNT))
      problems.push({
        code: 'stock-use-invalid',
        severity: 'error',
        at: { table: 'stockUses', id, field: 'amount' },
        message: `The amount taken from stock is ${amount}, which is not from 0 to ${MAX_AMOUNT}.`,
        wayOut: 'Enter how much was taken.',
      });
  const told = new Set<string>();
  for (const { doneTaskId, taskId, measured } of uses) {
    if (!measured || doneTaskId === null || told.has(doneTaskId)) continue;
    told.add(doneTaskId);
    const own = uses.filter((use) => use.taskId === taskId && use.planned !== null);
    const planned = own.reduce((sum, use) => sum + (use.planned ?? 0), 0);
    const used = own.reduce((sum, use) => sum + use.used, 0);
    if (planned > 0 && used >= planned * DOUBTFUL_LITRES_FACTOR)
      problems.push({
        code: 'litres-doubtful',
        severity: 'warning',
        at: { table: 'doneTasks', id: doneTaskId, field: 'litres' },
        message: `This coat took ${formatVolume(used, input.settings)}, ${Math.round(used / planned)} times what was reckoned.`,
        wayOut: 'Look for a slip in the decimals, or for millilitres entered as litres.',
      });
  }
  return problems;
}

/** Less than this is dust of rounding and of measuring cups, in the product's unit. */
const BEYOND_NOTED = 0.005;
