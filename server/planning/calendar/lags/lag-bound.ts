import type { LagNet } from './lag-net.ts';
import { type LagProblem, NO_PATH } from './lag-problem.ts';

/**
 * When, at the earliest, can all activities be over?
 *
 * @param problem see lag-problem.ts
 * @param net its net, from longestLags, perhaps tightened since
 * @returns time units: no schedule that keeps the net ends before it
 *
 * Source: the longest path, and the energy argument: activities that all start at `head` or later and all leave at
 * least `tail` after them keep a resource busy in between for as long as their work needs at full capacity (J. Carlier,
 * European Journal of Operational Research 11, 1982, for one machine). Valid range: that of requireLagProblem.
 * Departures: none. Example: three activities of 4 units on one machine: 12.
 */
export function lagBound(problem: LagProblem, net: LagNet): number {
  const { durations, demands, capacities } = problem;
  const { size, at } = net;
  const count = size - 1;
  const heads = durations.map((_, index) => at[count * size + index] as number);
  const tails = durations.map((duration, index) => tailAfter(net, durations, index) - duration);
  let bound = 0;
  for (let index = 0; index < count; index++)
    bound = Math.max(
      bound,
      (heads[index] as number) + (durations[index] as number) + (tails[index] as number),
    );

  for (const [resource, capacity] of capacities.entries()) {
    if (capacity === 0) continue;
    const users = durations.flatMap((duration, index) => {
      const work = duration * (demands[index]?.[resource] as number);
      return work > 0 ? [{ work, head: heads[index] as number, tail: tails[index] as number }] : [];
    });
    users.sort((left, right) => right.head - left.head);
    for (const tail of new Set(users.map((user) => user.tail))) {
      let work = 0;
      for (const user of users) {
        if (user.tail < tail) continue;
        work += user.work;
        bound = Math.max(bound, user.head + Math.ceil(work / capacity) + tail);
      }
    }
  }
  return bound;
}

/** Time from the start of an activity to the earliest end of everything that must follow it. */
function tailAfter({ size, at }: LagNet, durations: readonly number[], index: number): number {
  let most = 0;
  for (let next = 0; next < size - 1; next++) {
    const lag = at[index * size + next] as number;
    if (lag !== NO_PATH) most = Math.max(most, lag + (durations[next] as number));
  }
  return most;
}
