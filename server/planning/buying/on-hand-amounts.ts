import { MAX_AMOUNT } from '../finish/constants.ts';
import type { Problem } from '../problem.ts';
import type { Product } from '../product.ts';
import type { OnHand, ProjectInput } from '../project-input.ts';

export interface OnHandAmount {
  /** In the product's unit. */
  readonly amount: number;
  readonly rows: readonly OnHand[];
}

/**
 * How much of each product is on the shelf already?
 *
 * @returns amount x count per product, in the product's unit, for everything that can be poured or counted together.
 *   Rolls, boards and sheets are looked after piece by piece by their cutting plans and left out here.
 *
 * Source: definition.
 * Example: 0.7 L twice and 0.3 L once: 1.7 L.
 */
export function onHandAmounts(
  input: ProjectInput,
  products: ReadonlyMap<string, Product>,
): { readonly amounts: ReadonlyMap<string, OnHandAmount>; readonly problems: readonly Problem[] } {
  const amounts = new Map<string, OnHandAmount>();
  const problems: Problem[] = [];
  for (const row of input.onHand) {
    const product = products.get(row.productId);
    if (product === undefined) problems.push(productUnknown(row));
    else if (!isCutToSize(product)) {
      const wrong = wrongField(row);
      if (wrong !== null) problems.push(onHandInvalid(row, product, wrong));
      else {
        const before = amounts.get(product.id) ?? { amount: 0, rows: [] };
        amounts.set(product.id, {
          amount: before.amount + row.amount * row.count,
          rows: [...before.rows, row],
        });
      }
    }
  }
  return { amounts, problems };
}

function isCutToSize({ kind }: Product): boolean {
  return kind === 'sheet' || kind === 'board' || kind === 'banding';
}

function wrongField({ amount, count }: OnHand): 'amount' | 'count' | null {
  if (!(amount >= 0 && amount <= MAX_AMOUNT)) return 'amount';
  return Number.isInteger(count) && count >= 0 && count <= MAX_AMOUNT ? null : 'count';
}

function productUnknown({ id, productId }: OnHand): Problem {
  return {
    code: 'product-unknown',
    severity: 'error',
    at: { table: 'onHand', id, field: 'productId' },
    message:
      productId === ''
        ? 'A line of what is on hand has no product chosen.'
        : `A line of what is on hand names the product "${productId}", which is not in the catalogue.`,
    wayOut: 'Choose a product from the catalogue, or delete the line.',
  };
}

function onHandInvalid(row: OnHand, product: Product, field: 'amount' | 'count'): Problem {
  return {
    code: 'on-hand-invalid',
    severity: 'error',
    at: { table: 'onHand', id: row.id, field },
    message: `On hand of "${product.name}" are ${row.count} x ${row.amount} ${product.unit}, which cannot be counted, so none is taken off the need.`,
    wayOut:
      field === 'amount'
        ? 'Enter how much is in one can or box, 0 or more.'
        : 'Enter how many there are, as a whole number.',
  };
}
