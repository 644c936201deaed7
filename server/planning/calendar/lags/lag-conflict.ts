import type { LagNet } from './lag-net.ts';
import type { LagProblem } from './lag-problem.ts';

/** "first is over before second starts": one way to settle a conflict. */
export type Settlement = readonly [first: number, second: number];

/**
 * Where does the earliest-start schedule of a net break a capacity, and how can that be settled?
 *
 * @param problem, net see lag-problem.ts, lag-net.ts
 * @returns the ways to settle one conflict, the gentlest first; empty when one cannot be settled at all; null when no
 *   capacity is broken, so that the earliest starts are a schedule
 *
 * Source: minimal forbidden sets (F. J. Radermacher, Annals of Operations Research 4, 1985): of activities that are too
 * many together but not with any one left out, some one is over before some other starts. Valid range: that of
 * requireLagProblem. Departures: of all conflicts the one with the fewest settlements is taken, one per moment looked at.
 */
export function lagConflict(problem: LagProblem, { size, at }: LagNet): Settlement[] | null {
  const { durations, demands, capacities } = problem;
  const origin = size - 1;
  const startOf = (index: number): number => at[origin * size + index] as number;
  const order = durations.map((_, index) => index).sort((left, right) => startOf(left) - startOf(right));
  let fewest: Settlement[] | null = null;

  for (const [resource, capacity] of capacities.entries()) {
    let running: number[] = [];
    for (const index of order) {
      const need = demands[index]?.[resource] as number;
      if (need === 0 || durations[index] === 0) continue;
      const now = startOf(index);
      running = running.filter((other) => startOf(other) + (durations[other] as number) > now);
      running.push(index);
      const set = minimalSet(running, index, (activity) => demands[activity]?.[resource] as number, capacity);
      if (set === null) continue;
      const ways = settlements(set);
      if (fewest === null || ways.length < fewest.length) fewest = ways;
      if (fewest.length <= 1) return fewest;
    }
  }
  fewest?.sort((left, right) => push(left) - push(right) || room(right) - room(left));
  return fewest;

  /** How far the second must move. */
  function push([first, second]: Settlement): number {
    return startOf(first) + (durations[first] as number) - startOf(second);
  }

  /** How much room the second has afterwards. */
  function room([first, second]: Settlement): number {
    return -(at[second * size + first] as number) - (durations[first] as number);
  }

  function settlements(set: readonly number[]): Settlement[] {
    const ways: Settlement[] = [];
    for (const first of set)
      for (const second of set)
        if (first !== second && (at[second * size + first] as number) + (durations[first] as number) <= 0)
          ways.push([first, second]);
    return ways;
  }
}

/** The newcomer with the neediest others, until they are too many; then without those that are not needed for that. */
function minimalSet(
  running: readonly number[],
  newcomer: number,
  needOf: (activity: number) => number,
  capacity: number,
): number[] | null {
  let total = 0;
  for (const activity of running) total += needOf(activity);
  if (total <= capacity) return null;
  const others = running
    .filter((activity) => activity !== newcomer)
    .sort((left, right) => needOf(right) - needOf(left));
  const set = [newcomer];
  let sum = needOf(newcomer);
  for (const activity of others) {
    if (sum > capacity) break;
    set.push(activity);
    sum += needOf(activity);
  }
  return set.filter((activity) => {
    if (sum - needOf(activity) <= capacity) return true;
    sum -= needOf(activity);
    return false;
  });
}
