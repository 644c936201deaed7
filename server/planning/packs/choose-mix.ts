import type { Pack } from '../product.ts';
import { COVER_TOLERANCE, FREE_BASE_PACKS, MOST_STATES, STEPS_PER_UNIT } from './constants.ts';
import { leastCostMix } from './least-cost-mix.ts';
import type { PackChoice, PackQuestion } from './pack-choice.ts';
import { usablePacks } from './usable-packs.ts';

/** One offer on the grid; its price is null where prices are not known. */
export interface Candidate {
  readonly size: number;
  readonly priceMinor: number | null;
}

/** Rank costs, whole and not below 0, one per candidate: the mix with the least sum is chosen. */
export type Ranking = (candidates: readonly Candidate[], target: number) => readonly number[];

/**
 * Which packs answer a question best, by a given ranking?
 *
 * @param question need and stock in the product's unit, offers, currency
 * @param ranking what each pack counts for
 * @returns the mix of least rank cost, then least left over, then fewest packs
 *
 * Method: `leastCostMix` on whole grid steps, the finest grid first, divided by the greatest common divisor of the
 * pack sizes: 0.473, 0.946 and 3.785 L become 473, 946 and 3785 steps of a millilitre.
 * Valid for needs up to 9e9 units; a need within COVER_TOLERANCE of what is there counts as covered.
 */
export function chooseMix(question: PackQuestion, ranking: Ranking): PackChoice {
  check(question);
  const { need, onHand, currency } = question;
  const toBuy = Math.max(0, need - onHand);
  if (toBuy <= COVER_TOLERANCE * (1 + 1e-6))
    return {
      basis: 'enough',
      packs: [],
      toBuy: 0,
      bought: 0,
      leftover: clean(onHand - need),
      costMinor: 0,
      proven: true,
    };
  const { basis, packs } = usablePacks(question.packs, currency);
  if (packs.length === 0)
    return { basis, packs: [], toBuy, bought: 0, leftover: null, costMinor: null, proven: false };

  const { counts, proven } = onGrid(toBuy, packs, basis === 'priced', ranking);
  const chosen = packs.flatMap((pack, index) => {
    const count = counts[index] ?? 0;
    return count > 0 ? [{ pack, count }] : [];
  });
  const bought = chosen.reduce((sum, { pack, count }) => sum + pack.amount * count, 0);
  return {
    basis,
    packs: chosen,
    toBuy,
    bought,
    leftover: clean(bought + onHand - need),
    costMinor:
      basis === 'priced'
        ? chosen.reduce((sum, { pack, count }) => sum + (pack.priceMinor ?? 0) * count, 0)
        : null,
    proven,
  };
}

function check({ need, onHand, packs }: PackQuestion): void {
  if (!(Number.isFinite(need) && need >= 0))
    throw new RangeError(`chooseMix: need must be a finite number of at least 0, got ${need}`);
  if (!(Number.isFinite(onHand) && onHand >= 0))
    throw new RangeError(`chooseMix: onHand must be a finite number of at least 0, got ${onHand}`);
  for (const { amount } of packs)
    if (!(Number.isFinite(amount) && amount * STEPS_PER_UNIT >= 1))
      throw new RangeError(`chooseMix: a pack's amount must be at least a millionth, got ${amount}`);
}

function onGrid(
  toBuy: number,
  packs: readonly Pack[],
  priced: boolean,
  ranking: Ranking,
): { readonly counts: readonly number[]; readonly proven: boolean } {
  const sizes = packs.map(({ amount }) => Math.round(amount * STEPS_PER_UNIT));
  const step = sizes.reduce(greatestCommonDivisor);
  const target = Math.ceil(Math.max(1, Math.round((toBuy - COVER_TOLERANCE) * STEPS_PER_UNIT)) / step);
  const candidates = packs.map(({ priceMinor }, index) => ({
    size: (sizes[index] ?? 0) / step,
    priceMinor: priced ? priceMinor : null,
  }));
  const costs = ranking(candidates, target);
  const gridPacks = candidates.map(({ size }, index) => ({ size, cost: costs[index] ?? 0 }));
  let counts: readonly number[] = [];
  for (const freeBasePacks of FREE_BASE_PACKS) {
    const found = leastCostMix({ target, packs: gridPacks, mostStates: MOST_STATES, freeBasePacks });
    if (found.complete) return { counts: found.counts, proven: freeBasePacks === Number.POSITIVE_INFINITY };
    counts = found.counts;
  }
  return { counts, proven: false };
}

function greatestCommonDivisor(left: number, right: number): number {
  return right === 0 ? left : greatestCommonDivisor(right, left % right);
}

/** Dust within the tolerance is nothing left over. */
function clean(leftover: number): number {
  return leftover < COVER_TOLERANCE ? 0 : leftover;
}
