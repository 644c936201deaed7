import type { BarsToCut } from '../../server/planning/cutting/stock-1d/cut-bars.ts';
import { seededRandom } from './seeded-random.ts';

/** Kerfs met in a shop, mm; 0 for tape cut with shears. */
const KERFS_MM = [0, 2.4, 3, 3.2] as const;

/**
 * A small random job of boards to cut: 3 to 8 lengths of 1 to 9 pieces each, 2 to 4 stock lengths with prices that are
 * not in proportion, some of them limited or leftovers that cost nothing. The longest stock is without limit.
 */
export function pricedBars(seed: number): BarsToCut {
  const random = seededRandom(seed * 7919 + 17);
  const between = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
  const stocks = Array.from({ length: between(2, 4) }, (_, index) => {
    const lengthMm = 100 * between(18, 42);
    const free = index > 0 && random() < 0.2;
    return {
      lengthMm: free ? between(600, 1800) : lengthMm,
      cost: free ? 0 : Math.round((lengthMm / 10) * (0.8 + 0.5 * random())),
      limit: free ? between(1, 2) : index > 0 && random() < 0.35 ? between(1, 4) : Number.POSITIVE_INFINITY,
    };
  });
  const longest = Math.max(...stocks.map(({ lengthMm }) => lengthMm));
  stocks[0] = { lengthMm: longest, cost: stocks[0]?.cost ?? 100, limit: Number.POSITIVE_INFINITY };
  const pieces = Array.from({ length: between(3, 8) }, () => ({
    lengthMm: between(380, Math.min(1900, longest)),
    count: between(1, 9),
  }));
  return { stocks, pieces, kerfMm: KERFS_MM[between(0, KERFS_MM.length - 1)] ?? 3 };
}
