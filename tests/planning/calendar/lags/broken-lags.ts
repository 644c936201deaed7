import type { LagProblem } from '../../../../server/planning/calendar/lags/lag-problem.ts';

/** Everything a schedule breaks, in words; empty when it keeps every lag and every capacity. */
export function brokenLags(
  { durations, demands, capacities, lags }: LagProblem,
  starts: readonly number[],
): string[] {
  const broken: string[] = [];
  if (starts.length !== durations.length)
    broken.push(`${starts.length} starts for ${durations.length} activities`);
  const startOf = (index: number): number => starts[index] ?? Number.NaN;
  for (const [index, start] of starts.entries())
    if (!(Number.isInteger(start) && start >= 0)) broken.push(`activity ${index} starts at ${start}`);
  for (const { from, to, lag } of lags)
    if (!(startOf(to) - startOf(from) >= lag))
      broken.push(`${to} starts ${startOf(to) - startOf(from)} after ${from}, not ${lag}`);
  for (const [resource, capacity] of capacities.entries())
    for (const moment of starts) {
      let taken = 0;
      for (const [index, start] of starts.entries())
        if (start <= moment && moment < start + (durations[index] ?? 0))
          taken += demands[index]?.[resource] ?? 0;
      if (taken > capacity) broken.push(`at ${moment} resource ${resource} holds ${taken} of ${capacity}`);
    }
  return broken;
}
