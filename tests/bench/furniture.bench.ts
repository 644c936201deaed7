import { performance } from 'node:perf_hooks';
import { cuttingSearch } from '../../server/planning/cutting/anytime/cutting-search.ts';
import { cuttingQuestion } from '../../server/planning/cutting/found/cutting-question.ts';
import { foundFault } from '../../server/planning/cutting/found/found-fault.ts';
import { foundFromLayouts } from '../../server/planning/cutting/found/found-from-layouts.ts';
import { planMaterials } from '../../server/planning/cutting/plan-materials.ts';
import { brokenRules } from '../planning/cutting/check-layout.ts';
import { furnitureParts } from './furniture-parts.ts';

/**
 * Random cabinets of about 60 parts on one to six sheets: the plan an edit gets, its time, and how many meet the bound
 * at once and after a search of some seconds. `npm run bench -- furniture [jobs=40] [seconds=3]`.
 */
export async function run(args: string[]): Promise<void> {
  const jobs = Number(args[0] ?? 40);
  const seconds = Number(args[1] ?? 3);
  const times: number[] = [];
  const met = { edit: 0, search: 0, proven: 0 };
  const sheets = { edit: 0, search: 0, bound: 0 };
  let parts = 0;
  for (let seed = 0; seed <= jobs; seed++) {
    const project = furnitureParts(seed);
    const start = performance.now();
    const [plan] = planMaterials(project.input, project.parts).materials;
    const time = performance.now() - start;
    // The first one warms up.
    if (seed === 0) continue;
    const asked = plan && cuttingQuestion(project.input, project.parts, plan.id);
    if (!plan || !asked) throw new Error(`job ${seed} has nothing to cut`);
    const { kerfMm, sheetTrimMm: trimMm } = project.input.settings;
    const broken = brokenRules(plan, { kerfMm, trimMm, demands: project.demands });
    if (broken.length > 0) console.log(`  job ${seed} BROKEN: ${broken.join('; ')}`);
    times.push(time);
    parts += project.demands.reduce((sum, { count }) => sum + count, 0);
    const stocks = plan.stocks.value ?? 0;
    sheets.edit += stocks;
    met.edit += Number(plan.proven);

    const search = cuttingSearch(asked.question, foundFromLayouts(asked, plan.layouts), 1);
    for (const end = performance.now() + seconds * 1000; !search.proven && performance.now() < end; )
      if (!search.run(1)) break;
    const { sheets: found, cost, boundCost, boundStocks } = search.plan;
    const fault = foundFault(asked.question, found);
    if (fault !== null) console.log(`  job ${seed} BROKEN: ${fault}`);
    const used = found.reduce((sum, { count }) => sum + count, 0);
    sheets.search += used;
    sheets.bound += boundStocks;
    met.search += Number(used <= boundStocks);
    met.proven += Number(cost <= boundCost);
  }
  times.sort((left, right) => left - right);
  const at = (share: number): string => (times[Math.floor(share * (times.length - 1))] ?? 0).toFixed(0);
  const share = (count: number): string => `${count} of ${jobs} (${Math.round((100 * count) / jobs)} %)`;
  console.log(
    `${jobs} jobs, ${(parts / jobs).toFixed(0)} parts each · bound ${sheets.bound} sheets in all\n` +
      `as for an edit   ms median ${at(0.5)} · p95 ${at(0.95)} · max ${at(1)} · ${sheets.edit} sheets · proven ${share(met.edit)}\n` +
      `after ${seconds} s more   ${sheets.search} sheets · bound met ${share(met.search)} · proven least cost ${share(met.proven)}`,
  );
}
