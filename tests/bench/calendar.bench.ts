import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import type { Lag, LagProblem } from '../../server/planning/calendar/lags/lag-problem.ts';
import { LagSearch } from '../../server/planning/calendar/lags/lag-search.ts';
import { planCalendar } from '../../server/planning/calendar/plan-calendar.ts';
import { checkCalendar } from '../planning/calendar/check-calendar.ts';
import { brokenLags } from '../planning/calendar/lags/broken-lags.ts';
import { finishingJob } from './finishing-job.ts';

const USAGE = `npm run bench -- calendar [FOLDER] [seconds=2] [every=1] [from=0] [only=WORD] [iterations=2500]

Plans seeded finishing jobs; with a FOLDER also runs the public scheduling instances found there, one JSON object a line:
  lags-*.jsonl  { name, status, best_lower, best_upper, sch }, sch in the text format of ProGen/max
seconds: limit per public instance. every, from: take every n-th. only: part of a set's name, or "jobs".
iterations: schedules built per finishing job.`;

interface PublicInstance {
  readonly name: string;
  readonly status: string;
  readonly best_lower: number | null;
  readonly best_upper: number | null;
  readonly sch: string;
}

/** Feasible, optimal, proven infeasible, gap and time for public scheduling sets; gap and time for finishing jobs. */
export async function run(args: string[]): Promise<void> {
  const folder = args.find((text) => !text.includes('='));
  const options = new Map(
    args.filter((text) => text.includes('=')).map((text) => text.split('=') as [string, string]),
  );
  const seconds = Number(options.get('seconds') ?? 2);
  const every = Number(options.get('every') ?? 1);
  const from = Number(options.get('from') ?? 0);
  const iterations = Number(options.get('iterations') ?? 2500);
  const only = options.get('only') ?? '';
  if (
    (folder !== undefined && !existsSync(folder)) ||
    !(seconds > 0) ||
    !(every >= 1) ||
    !(iterations >= 1)
  ) {
    console.log(USAGE);
    process.exitCode = 2;
    return;
  }
  if (folder === undefined) console.log(`${USAGE}\n`);
  warmUp();
  if (only === '' || only === 'jobs') finishingJobs(iterations);
  const sets =
    folder === undefined ? [] : readdirSync(folder).filter((name) => /^lags-.*\.jsonl$/.test(name));
  for (const file of sets.filter((name) => name.includes(only))) {
    const lines = readFileSync(join(folder ?? '', file), 'utf8')
      .trim()
      .split('\n');
    const chosen = lines.filter((_, index) => index >= from && (index - from) % every === 0);
    publicSet(
      file.replace('.jsonl', ''),
      chosen.map((line) => JSON.parse(line) as PublicInstance),
      seconds,
    );
  }
}

function publicSet(name: string, instances: readonly PublicInstance[], seconds: number): void {
  const times: number[] = [];
  const gaps: number[] = [];
  const notes: string[] = [];
  let optimal = 0;
  let refuted = 0;
  let feasible = 0;
  let infeasible = 0;
  for (const instance of instances) {
    const problem = parseProgenMax(instance.sch);
    const start = performance.now();
    const search = new LagSearch(problem, 1);
    while (search.state === 'open' && performance.now() - start < seconds * 1000) search.run(2);
    times.push(performance.now() - start);
    const hasNone = instance.status === 'infeasible';
    if (hasNone) infeasible++;
    else feasible++;
    if (search.state === 'infeasible') {
      if (hasNone) refuted++;
      else notes.push(`WRONG ${instance.name}: said to be infeasible`);
    }
    if (search.best === null) {
      if (search.state === 'open') notes.push(`${instance.name}: none found (${instance.status})`);
      continue;
    }
    const broken = brokenLags(problem, search.best);
    if (hasNone || broken.length > 0)
      notes.push(`WRONG ${instance.name}: ${broken[0] ?? 'a schedule for none'}`);
    const known = instance.best_upper ?? search.makespan;
    gaps.push(search.makespan / known - 1);
    if (search.state === 'optimal') optimal++;
    if (search.bound > known)
      notes.push(`WRONG ${instance.name}: bound ${search.bound} above known ${known}`);
    if (search.state === 'optimal' && search.makespan < (instance.best_lower ?? 0))
      notes.push(`WRONG ${instance.name}: ${search.makespan} below the known bound`);
    if (search.makespan > known) notes.push(`${instance.name}: ${search.makespan}, known ${known}`);
  }
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / Math.max(1, gaps.length);
  console.log(
    [
      name.padEnd(12),
      `${instances.length} instances`,
      `feasible found ${gaps.length}/${feasible}`,
      `optimal ${optimal}`,
      `infeasible proven ${refuted}/${infeasible}`,
      `mean gap ${(mean * 100).toFixed(3)} %`,
      spread(times),
    ].join(' | '),
  );
  for (const text of notes) console.log(`  ${text}`);
}

function finishingJobs(iterations: number): void {
  const sizes = [
    ['furniture', 4],
    ['furniture', 12],
    ['furniture', 24],
    ['coats', 5],
    ['coats', 20],
    ['coats', 60],
  ] as const;
  for (const [kind, batches] of sizes) {
    const times: number[] = [];
    const gaps: number[] = [];
    const broken: string[] = [];
    let proven = 0;
    let tasks = 0;
    for (let seed = 1; seed <= 5; seed++) {
      const input = finishingJob(kind, batches, seed, iterations);
      const start = performance.now();
      const plan = planCalendar(input);
      times.push(performance.now() - start);
      gaps.push(plan.gap ?? Number.POSITIVE_INFINITY);
      broken.push(...checkCalendar(input, plan));
      if (plan.proven) proven++;
      tasks = plan.tasks.length;
    }
    console.log(
      [
        `${kind} ${batches}`.padEnd(12),
        `${tasks} tasks`,
        `proven ${proven}/5`,
        `gap to bound mean ${((100 * gaps.reduce((sum, gap) => sum + gap, 0)) / 5).toFixed(2)} %, most ${(100 * Math.max(...gaps)).toFixed(2)} %`,
        spread(times),
        broken.length === 0 ? 'every plan checked' : `${broken.length} BROKEN: ${broken[0]}`,
      ].join(' | '),
    );
  }
}

/** Reads the text format of ProGen/max: lags in brackets, then durations and demands, then capacities. */
function parseProgenMax(text: string): LagProblem {
  const rows = text
    .trim()
    .split('\n')
    .map((line) => line.trim().split(/\s+/));
  const numberAt = (row: number, column: number): number =>
    Number((rows[row]?.[column] ?? '').replace(/[[\]]/g, ''));
  const count = numberAt(0, 0) + 2;
  const lags: Lag[] = [];
  const durations: number[] = [];
  const demands: number[][] = [];
  for (let activity = 0; activity < count; activity++) {
    const successors = numberAt(1 + activity, 2);
    for (let at = 0; at < successors; at++)
      lags.push({
        from: activity,
        to: numberAt(1 + activity, 3 + at),
        lag: numberAt(1 + activity, 3 + successors + at),
      });
    durations.push(numberAt(1 + count + activity, 2));
    demands.push((rows[1 + count + activity] ?? []).slice(3).map(Number));
  }
  return { durations, demands, capacities: (rows[1 + 2 * count] ?? []).map(Number), lags };
}

/** Runs both searches once, so that compiling falls outside the clock. */
function warmUp(): void {
  planCalendar(finishingJob('furniture', 3, 9, 100));
  planCalendar(finishingJob('coats', 4, 9, 100));
  const durations = Array.from({ length: 12 }, (_, index) => 1 + (index % 4));
  const search = new LagSearch(
    { durations, demands: durations.map(() => [1]), capacities: [2], lags: [] },
    9,
  );
  search.run(200);
}

function spread(times: readonly number[]): string {
  const sorted = [...times].sort((left, right) => left - right);
  const share = (part: number): string =>
    (sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? 0).toFixed(1);
  return `ms least ${share(0)}, median ${share(0.5)}, p90 ${share(0.9)}, most ${share(1)}`;
}
