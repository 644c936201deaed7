import { isPositive } from '../finish/is-positive.ts';
import { usablePacks } from '../packs/usable-packs.ts';
import type { Problem } from '../problem.ts';
import type { Product } from '../product.ts';
import type { OnHand, ProjectInput } from '../project-input.ts';
import type { RollOffer } from './choose-rolls.ts';
import { MM_PER_M } from './constants.ts';

export interface RollOnHand {
  readonly onHandId: string;
  readonly lengthMm: number;
  readonly count: number;
}

export interface RollStock {
  /** Shortest first, so that leftovers are used up before whole rolls. */
  readonly onHand: readonly RollOnHand[];
  readonly offers: readonly RollOffer[];
  /** False when no price in the project's currency is known: then metres are saved, not money. */
  readonly priced: boolean;
  readonly problems: readonly Problem[];
}

/**
 * Which rolls of a banding product are on the shelf, and which can be bought?
 *
 * `product`: its packs, metres per roll. `input`: what is on hand, metres per roll, and the currency. Result: lengths
 * in mm. Packs of no length are left out; prices count in the project's currency only, as `usablePacks` has it. What
 * is on hand without a length or a whole count is a problem and is not used. No source: a definition.
 *
 * Example: 2 rolls of 7.5 m on hand, and 25 m or 50 m to buy.
 */
export function rollStock(product: Product, input: ProjectInput): RollStock {
  const rolls = product.packs.filter(({ amount }) => isPositive(amount));
  const { packs, basis } = usablePacks(rolls, input.settings.currency);
  const onHand: RollOnHand[] = [];
  const problems: Problem[] = [];
  for (const row of input.onHand) {
    if (row.productId !== product.id) continue;
    if (isPositive(row.amount) && Number.isInteger(row.count) && row.count >= 0)
      onHand.push({ onHandId: row.id, lengthMm: row.amount * MM_PER_M, count: row.count });
    else problems.push(onHandInvalid(row, product));
  }
  return {
    onHand: onHand.sort((one, other) => one.lengthMm - other.lengthMm),
    offers: packs.map((pack) => ({
      packId: pack.id,
      label: pack.label,
      lengthMm: pack.amount * MM_PER_M,
      priceMinor: basis === 'priced' ? pack.priceMinor : null,
    })),
    priced: basis === 'priced',
    problems,
  };
}

function onHandInvalid(row: OnHand, product: Product): Problem {
  return {
    code: 'on-hand-invalid',
    severity: 'warning',
    at: { table: 'onHand', id: row.id, field: isPositive(row.amount) ? 'count' : 'amount' },
    message: `${row.count} rolls of ${row.amount} m of "${product.name}" on hand cannot be used.`,
    wayOut: 'Enter the length of one roll in metres, and how many such rolls there are.',
  };
}
