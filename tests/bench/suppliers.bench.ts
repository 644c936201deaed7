import { performance } from 'node:perf_hooks';
import {
  packsOf,
  solvedByProgram,
  supplierQuestion,
} from '../planning/buying/suppliers/supplier-question.ts';
import { suppliersByHighs } from '../planning/buying/suppliers/suppliers-by-highs.ts';
import { loadSolver } from '../planning/cutting/least-cost-by-highs.ts';

/** Runs of each question by the program, of which the mean counts: one alone is too short for the clock. */
const RUNS = 20;

/**
 * Random buy lists for several suppliers with delivery, thresholds and surcharges: the packs of every line at every supplier and
 * the choice of suppliers by the program, and by HiGHS, a general-purpose solver, in the same run.
 * `npm run bench -- suppliers [questions]`; 500 by default.
 */
export async function run(args: string[]): Promise<void> {
  const questions = Number(args[0] ?? 500);
  const highs = await loadSolver();
  for (let seed = 100_001; seed < 100_011; seed++) {
    const question = supplierQuestion(seed);
    suppliersByHighs(highs, question);
    for (let again = 0; again < RUNS; again++) solvedByProgram(question, packsOf(question));
  }
  const times = { program: [] as number[], highs: [] as number[] };
  const counts = { packs: 0, packsEqual: 0, equal: 0, proven: 0, flipped: 0, lines: 0 };
  for (let seed = 1; seed <= questions; seed++) {
    const question = supplierQuestion(seed);
    const packs = packsOf(question);
    const start = performance.now();
    const byHighs = suppliersByHighs(highs, question);
    const middle = performance.now();
    let own = solvedByProgram(question, packs);
    for (let again = 1; again < RUNS; again++) own = solvedByProgram(question, packs);
    times.highs.push(middle - start);
    times.program.push((performance.now() - middle) / RUNS);
    for (const [line, costs] of own.costs.entries())
      for (const [supplier, cost] of costs.entries()) {
        if (cost === null) continue;
        counts.packs++;
        counts.packsEqual += Number(cost === byHighs.costs[line]?.[supplier]);
      }
    counts.lines += question.lines.length;
    counts.equal += Number(own.choice.totalMinor === byHighs.totalMinor);
    counts.proven += Number(own.choice.proven);
    counts.flipped += Number(own.choice.lineByLineMinor > own.choice.totalMinor);
    if (own.choice.totalMinor !== byHighs.totalMinor)
      console.log(`  question ${seed}: ${own.choice.totalMinor} against ${byHighs.totalMinor}`);
  }
  console.log(
    `${questions} questions, ${counts.lines} lines · pack choices equal ${counts.packsEqual} of ${counts.packs}`,
  );
  console.log(
    `supplier choices equal ${counts.equal} of ${questions}, ${counts.proven} proven · in ${counts.flipped} choosing together saves money`,
  );
  line('program', times.program);
  line('HiGHS', times.highs);
  console.log(`HiGHS takes ${(sum(times.highs) / sum(times.program)).toFixed(0)} times as long in all`);
}

function sum(times: readonly number[]): number {
  return times.reduce((total, time) => total + time, 0);
}

function line(what: string, times: readonly number[]): void {
  const sorted = [...times].sort((left, right) => left - right);
  const at = (share: number): string => (sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(3);
  console.log(
    `${what.padEnd(8)} ms min ${at(0)} · median ${at(0.5)} · p95 ${at(0.95)} · max ${at(1)} · sum ${sum(times).toFixed(0)}`,
  );
}
