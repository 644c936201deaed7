import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import type { SheetJob } from '../../server/planning/cutting/sheet-2d/sheet-job.ts';
import { SheetSearch } from '../../server/planning/cutting/sheet-2d/sheet-search.ts';
import { sheetsBound } from '../../server/planning/cutting/sheet-2d/sheets-bound.ts';
import { startSheets } from '../../server/planning/cutting/sheet-2d/start-sheets.ts';
import type { BarJob } from '../../server/planning/cutting/stock-1d/bar-job.ts';
import { BarSearch } from '../../server/planning/cutting/stock-1d/bar-search.ts';
import { brokenBars, brokenSheets } from './check-cutting.ts';

const USAGE = `npm run bench -- cutting FOLDER [seconds=3] [every=1] [from=0] [only=WORD]

Runs the public cutting instances found in FOLDER, one JSON object a line:
  1d-*.jsonl  { name, capacity, items: [[size, count]], best_lower, best_upper }
  2d-*.jsonl  { name, length, height, items: [[length, height, count]], oriented_lower, oriented_best, rotated_* }
seconds: limit per instance. every, from: take every n-th instance. only: file names or "oriented" / "rotated".`;

/** Enough for every pair of dual feasible functions on instances of a hundred pieces. */
const BOUND_EFFORT = 10_000_000;

interface Bar {
  readonly name: string;
  readonly capacity: number;
  readonly items: readonly (readonly [number, number])[];
  readonly best_lower: number;
  readonly best_upper: number;
}

interface Sheet {
  readonly name: string;
  readonly length: number;
  readonly height: number;
  readonly items: readonly (readonly [number, number, number])[];
  readonly oriented_lower: number;
  readonly oriented_best: number;
  readonly rotated_lower: number;
  readonly rotated_best: number;
}

interface Result {
  readonly used: number;
  readonly bound: number;
  readonly knownLower: number;
  readonly knownBest: number;
  readonly milliseconds: number;
}

/** Solved, proven, totals against published bests, bounds and times for each set of public instances. */
export async function run(args: string[]): Promise<void> {
  const [folder, ...rest] = args;
  const options = new Map(rest.map((text) => text.split('=') as [string, string]));
  const seconds = Number(options.get('seconds') ?? 3);
  const every = Number(options.get('every') ?? 1);
  const from = Number(options.get('from') ?? 0);
  if (folder === undefined || !existsSync(folder) || !(seconds > 0) || !(every >= 1)) {
    console.log(USAGE);
    process.exitCode = folder === undefined ? 0 : 2;
    return;
  }
  const only = options.get('only') ?? '';
  const sets = readdirSync(folder)
    .filter((name) => /^[12]d-.*\.jsonl$/.test(name))
    .flatMap((file) =>
      file.startsWith('2d')
        ? [
            { file, mode: 'oriented' },
            { file, mode: 'rotated' },
          ]
        : [{ file, mode: 'bars' }],
    )
    .filter(({ file, mode }) => file.includes(only) || mode === only);
  warmUp();
  for (const { file, mode } of sets) {
    const lines = readFileSync(join(folder, file), 'utf8').trim().split('\n');
    const results: Result[] = [];
    const failed: string[] = [];
    for (let at = from; at < lines.length; at += every) {
      const instance = JSON.parse(lines[at] as string) as Bar & Sheet;
      const { result, broken } =
        mode === 'bars' ? cutBars(instance, seconds) : cutSheets(instance, mode, seconds);
      results.push(result);
      if (broken.length > 0) failed.push(`${instance.name}: ${broken.join('; ')}`);
    }
    report(`${file.replace('.jsonl', '')}${mode === 'bars' ? '' : ` ${mode}`}`, results, failed);
  }
}

function cutBars(instance: Bar, seconds: number): { result: Result; broken: string[] } {
  const job: BarJob = {
    stocks: [{ length: instance.capacity, cost: 1, limit: Number.POSITIVE_INFINITY }],
    pieces: instance.items.map(([length, count]) => ({ length, count })),
  };
  const start = performance.now();
  const search = new BarSearch(job);
  let going = !search.done;
  while (going && performance.now() - start < seconds * 1000) going = search.run(1);
  const milliseconds = performance.now() - start;
  const { best_lower: knownLower, best_upper: knownBest } = instance;
  const result = { used: search.bestCost, bound: search.bound, knownLower, knownBest, milliseconds };
  return { result, broken: brokenBars(job, search.best) };
}

function cutSheets(instance: Sheet, mode: string, seconds: number): { result: Result; broken: string[] } {
  const turnable = mode === 'rotated';
  const job: SheetJob = {
    stocks: [{ length: instance.length, width: instance.height, cost: 1, limit: Number.POSITIVE_INFINITY }],
    pieces: instance.items.map(([length, width, count]) => ({ length, width, count, turnable })),
  };
  const start = performance.now();
  const bound = sheetsBound(job, BOUND_EFFORT).stocks;
  const search = new SheetSearch(job, startSheets(job), bound, 1);
  while (!search.done && performance.now() - start < seconds * 1000) search.run(20);
  const milliseconds = performance.now() - start;
  const knownLower = turnable ? instance.rotated_lower : instance.oriented_lower;
  const knownBest = turnable ? instance.rotated_best : instance.oriented_best;
  const result = { used: search.bestCost, bound, knownLower, knownBest, milliseconds };
  return { result, broken: brokenSheets(job, search.best) };
}

/** Runs both searches once on a made-up job, so that compiling falls outside the clock. */
function warmUp(): void {
  const items = Array.from({ length: 40 }, (_, index) => [20 + ((index * 37) % 60), 1] as const);
  cutBars({ name: 'warm-up', capacity: 150, items, best_lower: 0, best_upper: 0 }, 0.3);
  const sheets = items.map(([size], index) => [size, 20 + ((index * 53) % 60), 1] as const);
  const none = { oriented_lower: 0, oriented_best: 0, rotated_lower: 0, rotated_best: 0 };
  cutSheets({ name: 'warm-up', length: 100, height: 100, items: sheets, ...none }, 'rotated', 0.3);
}

function report(name: string, results: readonly Result[], failed: readonly string[]): void {
  const sum = (of: (result: Result) => number): number =>
    results.reduce((total, result) => total + of(result), 0);
  const times = results.map(({ milliseconds }) => milliseconds).sort((left, right) => left - right);
  const time = (share: number): string =>
    (times[Math.min(times.length - 1, Math.floor(share * times.length))] ?? 0).toFixed(1);
  const count = (holds: (result: Result) => boolean): number => results.filter(holds).length;
  console.log(
    [
      name.padEnd(20),
      `${results.length} instances`,
      `known best reached ${count(({ used, knownBest }) => used <= knownBest)}, beaten ${count(({ used, knownBest }) => used < knownBest)}`,
      `proven ${count(({ used, bound }) => used === bound)}`,
      `stock ${sum(({ used }) => used)} (known best ${sum(({ knownBest }) => knownBest)})`,
      `bound ${sum(({ bound }) => bound)} (known ${sum(({ knownLower }) => knownLower)})`,
      `ms median ${time(0.5)}, p90 ${time(0.9)}, most ${time(1)}`,
      failed.length === 0 ? 'every layout checked' : `${failed.length} BROKEN`,
    ].join(' | '),
  );
  for (const text of failed) console.log(`  ${text}`);
}
