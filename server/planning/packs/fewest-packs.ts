import { chooseMix, type Ranking } from './choose-mix.ts';
import type { PackChoice, PackQuestion } from './pack-choice.ts';

/**
 * Which packs cover a need with the fewest cans to carry, open and keep?
 *
 * @param question need and what is on hand in the product's unit, the offers, and the project's currency
 * @returns the mix of fewest packs, then least cost, then least left over; without prices, fewest packs, then least
 *   left over
 *
 * Source: definition. Method: `leastCostMix` with a charge on every pack larger than any cost that the fewest packs
 * could come to, so that one pack less always outweighs the price.
 *
 * Example: 4.4 L from 3.785 L at 60.00 and 0.946 L at 18.00: one of each, two packs.
 */
export function fewestPacks(question: PackQuestion): PackChoice {
  return chooseMix(question, byCount);
}

const byCount: Ranking = (candidates, target) => {
  const costs = candidates.map(({ size, priceMinor }) => priceMinor ?? size);
  const largest = candidates.reduce((most, { size }) => Math.max(most, size), 0);
  const fewest = Math.ceil(target / largest);
  const charge = fewest * Math.max(...costs) + 1;
  return costs.map((cost) => charge + cost);
};
