import type { Lag, LagProblem } from './lag-problem.ts';

/**
 * Which lags contradict each other?
 *
 * @param problem see lag-problem.ts
 * @returns lags in running order, each starting where the one before ends and the last ending where the first starts,
 *   adding up to more than 0: an activity would have to start after itself. Null when there is no such ring.
 *
 * Source: R. Bellman, "On a routing problem", Quarterly of Applied Mathematics 16, 1958, on longest paths: a path that
 * still grows after as many rounds as there are activities runs through such a ring. Valid range: that of
 * requireLagProblem. Departures: none. Example: "b at least 5 after a" and "b at most 3 after a" are one ring, sum 2.
 */
export function positiveCycle(problem: LagProblem): Lag[] | null {
  const count = problem.durations.length;
  const distance = new Array<number>(count).fill(0);
  const parent = new Array<Lag | null>(count).fill(null);
  let grown = -1;
  for (let round = 0; round <= count; round++) {
    grown = -1;
    for (const lag of problem.lags) {
      const reached = (distance[lag.from] as number) + lag.lag;
      if (reached <= (distance[lag.to] as number)) continue;
      distance[lag.to] = reached;
      parent[lag.to] = lag;
      grown = lag.to;
    }
    if (grown < 0) return null;
  }

  // Far enough back along the parents every step lies on the ring.
  let node = grown;
  for (let step = 0; step < count; step++) node = (parent[node] as Lag).from;
  const ring: Lag[] = [];
  let at = node;
  do {
    const lag = parent[at] as Lag;
    ring.unshift(lag);
    at = lag.from;
  } while (at !== node);
  return ring;
}
