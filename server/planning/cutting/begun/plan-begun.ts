import type { StockLayout } from '../../plan-output.ts';
import { countLayouts, type LaidBlanks } from '../laid-blanks.ts';
import type { MaterialJob } from '../material-job.ts';
import type { BegunJob } from './begun-job.ts';

const MM2_PER_M2 = 1_000_000;

/**
 * The plan of a material whose sheets are being cut.
 *
 * `begun`: which sheets stay, and what is asked for beside them. `make`: makes a plan for a job. Result: the plan begun as
 * it is, where it stays as a whole, whatever could be better now; else the sheets begun and a plan for the rest. The
 * bound of the rest and the cost of the sheets begun make the bound. Rule of ours.
 */
export function planBegun(
  { whole, layouts, begunStocks, all, open }: BegunJob,
  make: (job: MaterialJob) => LaidBlanks,
): LaidBlanks {
  const made = make(open);
  const cost = costOf(layouts, all);
  const bought = boughtIn(layouts);
  if (whole)
    return {
      ...made,
      layouts: joined(layouts),
      cost,
      boundCost: Math.min(made.boundCost, cost),
      boundStocks: Math.min(made.boundStocks, bought),
      begunStocks,
    };
  return {
    ...made,
    layouts: joined([...layouts, ...made.layouts]),
    cost: made.cost + cost,
    boundCost: made.boundCost + cost,
    boundStocks: made.boundStocks + bought,
    netM2:
      all.blanks.reduce((sum, blank) => sum + blank.lengthMm * blank.widthMm * blank.count, 0) / MM2_PER_M2,
    begunStocks,
  };
}

/**
 * What sheets cost, in the unit of the job's costs.
 *
 * `layouts`: of packs of the job, and of stock on hand, which costs nothing. Result: sum of count x cost. Exact.
 */
export function costOf(layouts: readonly StockLayout[], { offers, costs }: MaterialJob): number {
  return layouts.reduce((sum, { packId, count }) => {
    const index = packId === null ? -1 : offers.findIndex((offer) => offer.packId === packId);
    return sum + count * (costs[index] ?? 0);
  }, 0);
}

function boughtIn(layouts: readonly StockLayout[]): number {
  return layouts.reduce((sum, { packId, count }) => sum + (packId === null ? 0 : count), 0);
}

/** Equal layouts counted together, those begun first, so that their sheets keep their numbers. */
function joined(layouts: readonly StockLayout[]): StockLayout[] {
  return countLayouts(layouts.map(({ id: _id, count, cut, ...place }) => ({ place, cut, times: count })));
}
