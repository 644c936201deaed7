import { performance } from 'node:perf_hooks';
import { cutBars } from '../../server/planning/cutting/stock-1d/cut-bars.ts';
import { leastCostByHighs, loadSolver } from '../planning/cutting/least-cost-by-highs.ts';
import { pricedBars } from './priced-bars.ts';

/** Up to some ten seconds' search where the plan is not proven sooner, as the search beside the editing takes. */
const LONGER = 200;

/**
 * Random priced jobs of boards with several lengths and limits, solved by the product (as for an edit, and longer) and
 * by HiGHS, a general-purpose solver, in the same run. `npm run bench -- bars-highs [jobs]`; 300 by default.
 */
export async function run(args: string[]): Promise<void> {
  const jobs = Number(args[0] ?? 300);
  const highs = await loadSolver();
  leastCostByHighs(highs, pricedBars(100_001));
  cutBars({ ...pricedBars(100_001), effort: 20 });
  const times = { edit: [] as number[], longer: [] as number[], highs: [] as number[] };
  const counts = { editLeast: 0, editProven: 0, longerLeast: 0, longerProven: 0, falseBounds: 0 };
  for (let seed = 1; seed <= jobs; seed++) {
    const toCut = pricedBars(seed);
    const least = timed(times.highs, () => leastCostByHighs(highs, toCut));
    const edit = timed(times.edit, () => cutBars(toCut));
    const longer = timed(times.longer, () => cutBars({ ...toCut, effort: LONGER }));
    counts.editLeast += Number(edit.cost === least);
    counts.editProven += Number(edit.proven);
    counts.longerLeast += Number(longer.cost === least);
    counts.longerProven += Number(longer.proven);
    counts.falseBounds += Number(longer.boundCost > least) + Number(edit.boundCost > least);
    if (longer.cost !== least) console.log(`  job ${seed}: ${longer.cost} against ${least}`);
  }
  console.log(`${jobs} jobs · bounds above the least cost: ${counts.falseBounds}`);
  line('as for an edit', times.edit, `${counts.editLeast} at least cost, ${counts.editProven} proven`);
  line('longer', times.longer, `${counts.longerLeast} at least cost, ${counts.longerProven} proven`);
  line('HiGHS', times.highs, 'all patterns listed, then solved');
  const ratio = (sum(times.highs) / sum(times.edit)).toFixed(1);
  console.log(`HiGHS takes ${ratio} times as long as an edit's plan in all`);
}

function timed<Result>(times: number[], work: () => Result): Result {
  const start = performance.now();
  const result = work();
  times.push(performance.now() - start);
  return result;
}

function sum(times: readonly number[]): number {
  return times.reduce((total, time) => total + time, 0);
}

function line(what: string, times: readonly number[], words: string): void {
  const sorted = [...times].sort((left, right) => left - right);
  const at = (share: number): string => (sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(1);
  console.log(
    `${what.padEnd(16)} ms min ${at(0)} · median ${at(0.5)} · p95 ${at(0.95)} · max ${at(1)} · ${words}`,
  );
}
