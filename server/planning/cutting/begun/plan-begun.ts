import type { StockLayout } from '../../plan-output.ts';
import type { Problem } from '../../problem.ts';
import type { ProjectInput } from '../../project-input.ts';
import { countLayouts, type LaidBlanks } from '../laid-blanks.ts';
import type { MaterialBlanks } from '../material-blanks.ts';
import { type MaterialJob, materialJob } from '../material-job.ts';
import { begunSheets } from './begun-sheets.ts';
import { layoutKeptFrom } from './kept-from.ts';

const MM2_PER_M2 = 1_000_000;

/**
 * The plan of a material whose sheets are being cut.
 *
 * `material`: the blanks, mm. `input`: with the plan begun. `make`: makes a plan for a job. Result: the plan begun as it is,
 * where it cuts just what is asked for, whatever could be better now; else the sheets begun and a new plan for the rest;
 * null where nothing was begun, or nothing of it is left. An offcut of the sheets begun is no stock for those sheets: it
 * is there for what comes on top. Rule of ours.
 */
export function planBegun(
  material: MaterialBlanks,
  input: ProjectInput,
  make: (job: MaterialJob) => LaidBlanks,
): { job: MaterialJob; laid: LaidBlanks; problems: Problem[] } | null {
  const begun = input.begunPlans?.find(({ materialId }) => materialId === material.product.id);
  if (begun === undefined) return null;
  const { kerfMm } = input.settings;
  const keys = new Set(begun.layouts.map(({ key }) => key));
  const own = materialJob(material, {
    ...input,
    onHand: input.onHand.filter((row) => !keys.has(layoutKeptFrom(row.keptFrom ?? ''))),
  });
  if (own.job === null) return null;
  const kept = begunSheets(begun, own.job, kerfMm);
  if (kept.layouts.length === 0) return null;
  const begunStocks = begun.layouts.reduce((sum, each) => sum + Math.min(each.begun, each.layout.count), 0);
  if (kept.whole) {
    const made = make(own.job);
    const cost = costOf(kept.layouts, own.job);
    const laid = {
      ...made,
      layouts: joined(kept.layouts),
      cost,
      boundCost: Math.min(made.boundCost, cost),
      boundStocks: Math.min(made.boundStocks, boughtIn(kept.layouts)),
      begunStocks,
    };
    return { job: own.job, laid, problems: own.problems };
  }
  const { job, problems } = materialJob(material, input);
  if (job === null) return null;
  const used = (onHandId: string | null): number =>
    kept.layouts.reduce((sum, each) => sum + (each.onHandId === onHandId ? each.count : 0), 0);
  const open = job.offers
    .map((offer, index) => ({ offer, cost: job.costs[index] as number }))
    .filter(({ offer }) => offer.onHandId === null || offer.limit > used(offer.onHandId));
  const rest = make({
    ...job,
    blanks: kept.left,
    offers: open.map(({ offer }) =>
      offer.onHandId === null ? offer : { ...offer, limit: offer.limit - used(offer.onHandId) },
    ),
    costs: open.map(({ cost }) => cost),
  });
  const cost = costOf(kept.layouts, job);
  const laid = {
    ...rest,
    layouts: joined([...kept.layouts, ...rest.layouts]),
    cost: rest.cost + cost,
    boundCost: rest.boundCost + cost,
    boundStocks: rest.boundStocks + boughtIn(kept.layouts),
    netM2:
      job.blanks.reduce((sum, blank) => sum + blank.lengthMm * blank.widthMm * blank.count, 0) / MM2_PER_M2,
    begunStocks: kept.layouts.reduce((sum, { count }) => sum + count, 0),
  };
  return { job, laid, problems };
}

function costOf(layouts: readonly StockLayout[], { offers, costs }: MaterialJob): number {
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
