/**
 * Activities that take time, share resources and are tied by lags: the resource-constrained project scheduling problem
 * with minimum and maximum lags. All times are whole units; the caller says which.
 */
export interface LagProblem {
  /** Time each activity takes, 0 or more. */
  readonly durations: readonly number[];
  /** Per activity: how much of each resource it holds while it runs. */
  readonly demands: readonly (readonly number[])[];
  /** How much there is of each resource at any time. */
  readonly capacities: readonly number[];
  readonly lags: readonly Lag[];
}

/** `start of to >= start of from + lag`. A maximum lag of L from a to b is a lag of -L from b to a. */
export interface Lag {
  readonly from: number;
  readonly to: number;
  readonly lag: number;
}

/** Stands for "no path". Two of them still add up inside 32 bits. */
export const NO_PATH = -1_000_000_000;

/** Times and lags beyond this are a caller's mistake: sums of them would no longer be exact. */
export const MOST_LAG_TIME = 100_000_000;

/**
 * Is the problem one that the searches can be asked about? Throws where it is not.
 *
 * @param problem whole, non-negative durations, demands and capacities; lags between existing activities
 * @throws RangeError naming the field, the value and the range
 *
 * Source: definition. Valid range: times up to 1e8 units. Departures: an activity that alone needs more of a resource
 * than there is, is no mistake: the searches answer that nothing fits. Example: a duration of 1.5 throws.
 */
export function requireLagProblem(problem: LagProblem): void {
  const count = problem.durations.length;
  for (const [index, duration] of problem.durations.entries()) whole(`durations[${index}]`, duration, 0);
  for (const [index, capacity] of problem.capacities.entries()) whole(`capacities[${index}]`, capacity, 0);
  if (problem.demands.length !== count)
    throw new RangeError(`demands must have one row per activity (${count}), got ${problem.demands.length}`);
  for (const [index, row] of problem.demands.entries()) {
    if (row.length !== problem.capacities.length)
      throw new RangeError(`demands[${index}] must have one entry per resource, got ${row.length}`);
    for (const demand of row) whole(`demands[${index}]`, demand, 0);
  }
  for (const [index, { from, to, lag }] of problem.lags.entries()) {
    whole(`lags[${index}].lag`, lag, -MOST_LAG_TIME);
    if (!(from >= 0 && from < count && to >= 0 && to < count) || from % 1 !== 0 || to % 1 !== 0)
      throw new RangeError(`lags[${index}] must join two of ${count} activities, got ${from} and ${to}`);
  }
}

function whole(name: string, value: number, low: number): void {
  if (!(Number.isInteger(value) && value >= low && value <= MOST_LAG_TIME))
    throw new RangeError(`${name} must be a whole number from ${low} to ${MOST_LAG_TIME}, got ${value}`);
}
