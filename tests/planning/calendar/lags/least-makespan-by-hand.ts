import type { LagProblem } from '../../../../server/planning/calendar/lags/lag-problem.ts';
import { brokenLags } from './broken-lags.ts';

/** Slow twin: tries every start up to `horizon` for every activity; null when none keeps the rules. */
export function leastMakespanByHand(problem: LagProblem, horizon: number): number | null {
  const { durations } = problem;
  let best: number | null = null;
  const starts: number[] = [];
  visit(0);
  return best;

  function visit(index: number): void {
    if (index === durations.length) {
      const makespan = Math.max(0, ...starts.map((start, at) => start + (durations[at] ?? 0)));
      if ((best === null || makespan < best) && brokenLags(problem, starts).length === 0) best = makespan;
      return;
    }
    for (let start = 0; start + (durations[index] ?? 0) <= horizon; start++) {
      if (best !== null && start + (durations[index] ?? 0) >= best) return;
      const lagsHold = problem.lags.every(({ from, to, lag }) => {
        if (from > index || to > index || (from !== index && to !== index)) return true;
        const at = (activity: number): number => (activity === index ? start : (starts[activity] ?? 0));
        return at(to) - at(from) >= lag;
      });
      if (!lagsHold) continue;
      starts.push(start);
      visit(index + 1);
      starts.pop();
    }
  }
}
