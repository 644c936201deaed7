import { describe, expect, it } from 'vitest';
import { cutBars } from '../../../server/planning/cutting/stock-1d/cut-bars.ts';
import { pricedBars } from '../../bench/priced-bars.ts';
import { leastCostByHighs, loadSolver } from './least-cost-by-highs.ts';

/** The bench compares 300 of them; these are every twentieth. */
const SEEDS = Array.from({ length: 15 }, (_, index) => 1 + 20 * index);
/** A few tenths of a second's search, where an edit's does not come to the proof. */
const EFFORT = 20;

describe('boards of several lengths, prices and limits', () => {
  it('cost as little as a general-purpose solver finds, and the bound never says more', async () => {
    const highs = await loadSolver();
    for (const seed of SEEDS) {
      const toCut = pricedBars(seed);
      const least = leastCostByHighs(highs, toCut);
      const { cost, boundCost } = cutBars({ ...toCut, effort: EFFORT });
      expect([seed, cost]).toEqual([seed, least]);
      expect(boundCost).toBeLessThanOrEqual(least);
      expect(cutBars(toCut).boundCost).toBeLessThanOrEqual(least);
    }
  });
});
