import type { Lag, LagProblem } from '../../../../server/planning/calendar/lags/lag-problem.ts';

/** A small problem of up to `most` activities, half of them with maximum lags tight enough to matter. */
export function randomLagProblem(random: () => number, most: number): LagProblem {
  const whole = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
  const count = whole(1, most);
  const resources = whole(1, 2);
  const lags: Lag[] = [];
  for (let from = 0; from < count; from++)
    for (let to = from + 1; to < count; to++) {
      if (random() < 0.4) lags.push({ from, to, lag: whole(0, 3) });
      if (random() < 0.25) lags.push({ from: to, to: from, lag: -whole(1, 5) });
    }
  return {
    durations: Array.from({ length: count }, () => whole(0, 3)),
    demands: Array.from({ length: count }, () => Array.from({ length: resources }, () => whole(0, 3))),
    capacities: Array.from({ length: resources }, () => whole(2, 4)),
    lags,
  };
}
