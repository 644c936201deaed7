import { chooseMix, type Ranking } from './choose-mix.ts';
import { PACKS_CHARGE_SHARE } from './constants.ts';
import type { PackChoice, PackQuestion } from './pack-choice.ts';

/**
 * Which packs cover a need at least cost?
 *
 * @param question need and what is on hand in the product's unit, the offers, and the project's currency
 * @returns the mix of least cost, then least left over, then fewest packs, unlimited packs of each size; proven least,
 *   not greedy. Where no price is known in the project's currency: the mix of least left over, and a cost of null;
 *   there a further pack must save at least a hundredth of the smallest pack (rule of ours: nobody carries five quarts
 *   home in place of a gallon and a quart to save a millilitre).
 *
 * Source: definition; method in `leastCostMix`. Valid for any need; see `chooseMix` for the grid and the tolerance.
 * Departure: for dozens of packs at prices in proportion to size, all but the last few base packs are taken
 * beforehand, and `proven` is false.
 *
 * Example: 4.4 L from 3.78 L at 40.00 and 0.946 L at 10.50: one of each is 50.50, the largest first; five of the
 * small ones are 52.50; so one of each. At 9.50 the five cost 47.50 and win over 49.50.
 */
export function leastCostPacks(question: PackQuestion): PackChoice {
  return chooseMix(question, byCost);
}

/** By price; without prices by amount, for the least bought is the least left over, plus the charge per pack. */
const byCost: Ranking = (candidates) => {
  const smallest = candidates.reduce((least, { size }) => Math.min(least, size), Number.POSITIVE_INFINITY);
  return candidates.map(({ size, priceMinor }) => priceMinor ?? size * PACKS_CHARGE_SHARE + smallest);
};
