import { figure } from '../figure.ts';
import type { MaterialPlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { ProjectInput } from '../project-input.ts';
import { begunJob } from './begun/begun-job.ts';
import { planBegun } from './begun/plan-begun.ts';
import { foundInstead } from './found/found-instead.ts';
import { withFound } from './found/with-found.ts';
import type { LaidBlanks } from './laid-blanks.ts';
import type { MaterialBlanks } from './material-blanks.ts';
import { materialFigures } from './material-figures.ts';
import { type MaterialJob, materialJob } from './material-job.ts';
import { layBlanks } from './sheet-2d/lay-blanks.ts';
import { layBars } from './stock-1d/lay-bars.ts';

/**
 * The cutting plan of one sheet or board product: layouts, how many to buy, the bound, the cost.
 *
 * `material`: the blanks, mm. `input`: settings, stock on hand. `effort`: share of an edit's work; null when kerf or trim
 * cannot be used, which leaves the plan open. A layout found earlier is taken where it is better. Result: the plan, and the problems of parts and stock.
 */
export function planMaterial(
  material: MaterialBlanks,
  input: ProjectInput,
  effort: number | null,
): { plan: MaterialPlan; problems: Problem[] } {
  const { product } = material;
  const { kerfMm } = input.settings;
  const figures = materialFigures(material, input);
  const common = {
    id: product.id,
    kind: product.kind === 'board' ? ('board' as const) : ('sheet' as const),
    name: product.name,
    thicknessMm: figures.thicknessMm,
    netM2: figures.netM2,
    netM: figures.netM,
  };
  const open = (why: string): MaterialPlan => ({
    ...common,
    stocks: figure(null, 'pcs', {
      rule: 'sheets or boards the cutting plan needs',
      inputs: [],
      notes: [why],
    }),
    boundStocks: figure(null, 'pcs', { rule: 'fewest any plan can need', inputs: [], notes: [why] }),
    proven: false,
    costMinor: figure(null, 'minor', {
      rule: 'sum of the prices of what is bought',
      inputs: [],
      notes: [why],
    }),
    layouts: [],
  });
  if (effort === null)
    return { plan: open('The saw kerf or the sheet trim in the settings cannot be used.'), problems: [] };

  const { job, problems } = materialJob(material, input);
  if (job === null) return { plan: open('No size of this material is known.'), problems };
  const make = (job: MaterialJob): LaidBlanks => {
    const found = foundInstead(job, kerfMm, input.foundLayouts);
    if (found !== null) return found;
    const lay = job.toLengthOnly ? layBars : layBlanks;
    const laid = lay(job.blanks, job.offers, job.costs, { kerfMm, effort, stages: job.stages });
    return withFound(laid, job, kerfMm, input.foundLayouts);
  };
  const begun = begunJob(material, input);
  if (begun !== null) {
    const laid = planBegun(begun, make);
    return { plan: { ...common, ...figures.ofPlan(laid, begun.all) }, problems: begun.problems };
  }
  return { plan: { ...common, ...figures.ofPlan(make(job), job) }, problems };
}
