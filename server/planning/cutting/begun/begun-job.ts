import type { StockLayout } from '../../plan-output.ts';
import type { Problem } from '../../problem.ts';
import type { ProjectInput } from '../../project-input.ts';
import type { MaterialBlanks } from '../material-blanks.ts';
import { type MaterialJob, materialJob } from '../material-job.ts';
import { begunSheets } from './begun-sheets.ts';
import { layoutKeptFrom } from './kept-from.ts';

/** What a material whose sheets are being cut still asks for. */
export interface BegunJob {
  /** The plan as it was begun cuts just what is asked for, and stays as it is. */
  readonly whole: boolean;
  /** Sheets that stay: all of them, or those begun; `count` of each. */
  readonly layouts: readonly StockLayout[];
  /** How many of them are being cut. */
  readonly begunStocks: number;
  /** All that the part list asks for. */
  readonly all: MaterialJob;
  /** What is to be laid beside the sheets that stay; all, where the whole plan does, as what it is measured against. */
  readonly open: MaterialJob;
  readonly problems: Problem[];
}

/**
 * The cutting job of a material whose sheets are being cut.
 *
 * `material`: the blanks, mm. `input`: with the plan begun. Result: which sheets stay and what is asked for beside them;
 * null where nothing was begun, or nothing of it is left. An offcut of the sheets begun is no stock for those sheets: it
 * is there for what comes on top. Rule of ours.
 */
export function begunJob(material: MaterialBlanks, input: ProjectInput): BegunJob | null {
  const begun = input.begunPlans?.find(({ materialId }) => materialId === material.product.id);
  if (begun === undefined) return null;
  const keys = new Set(begun.layouts.map(({ key }) => key));
  const own = materialJob(material, {
    ...input,
    onHand: input.onHand.filter((row) => !keys.has(layoutKeptFrom(row.keptFrom ?? ''))),
  });
  if (own.job === null) return null;
  const { layouts, left, whole } = begunSheets(begun, own.job, input.settings.kerfMm);
  if (layouts.length === 0) return null;
  if (whole) {
    const begunStocks = begun.layouts.reduce((sum, one) => sum + Math.min(one.begun, one.layout.count), 0);
    return { whole, layouts, begunStocks, all: own.job, open: own.job, problems: own.problems };
  }
  const { job, problems } = materialJob(material, input);
  if (job === null) return null;
  const begunStocks = layouts.reduce((sum, { count }) => sum + count, 0);
  return { whole, layouts, begunStocks, all: job, open: without(job, layouts, left), problems };
}

/** The job with less to cut, and without the stock on hand that the sheets begun take. */
function without(
  job: MaterialJob,
  layouts: readonly StockLayout[],
  blanks: MaterialJob['blanks'],
): MaterialJob {
  const used = (onHandId: string): number =>
    layouts.reduce((sum, each) => sum + (each.onHandId === onHandId ? each.count : 0), 0);
  const open = job.offers.flatMap((offer, index) => {
    const cost = job.costs[index] as number;
    if (offer.onHandId === null) return [{ offer, cost }];
    const limit = offer.limit - used(offer.onHandId);
    return limit > 0 ? [{ offer: { ...offer, limit }, cost }] : [];
  });
  return { ...job, blanks, offers: open.map(({ offer }) => offer), costs: open.map(({ cost }) => cost) };
}
