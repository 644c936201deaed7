import { type LagProblem, NO_PATH } from './lag-problem.ts';

/**
 * The longest lag between every two activities, directly or through others. Row-major, `size` x `size`; the last index
 * is the origin, the moment before which nothing starts. `at[i * size + j]` is the least `start of j - start of i`.
 * The row of the origin holds earliest starts, its column the negated latest starts.
 */
export interface LagNet {
  readonly size: number;
  readonly at: Int32Array;
}

/**
 * How far apart must every two activities start, at least?
 *
 * @param problem see lag-problem.ts
 * @returns the net, or null when the lags contradict each other (positiveCycle then says where)
 *
 * Source: R. W. Floyd, "Algorithm 97: Shortest path", Communications of the ACM 5(6), 1962, for longest paths. Valid
 * range: that of requireLagProblem. Departures: none. Example: lags a-b 5 and b-c -2 give a-c 3.
 */
export function longestLags(problem: LagProblem): LagNet | null {
  const size = problem.durations.length + 1;
  const origin = size - 1;
  const at = new Int32Array(size * size).fill(NO_PATH);
  for (let index = 0; index < size; index++) {
    at[index * size + index] = 0;
    at[origin * size + index] = 0;
  }
  for (const { from, to, lag } of problem.lags) {
    const cell = from * size + to;
    if (lag > (at[cell] as number)) at[cell] = lag;
  }
  for (let via = 0; via < size; via++)
    for (let from = 0; from < size; from++) {
      const first = at[from * size + via] as number;
      if (first === NO_PATH) continue;
      for (let to = 0; to < size; to++) {
        const second = at[via * size + to] as number;
        if (second !== NO_PATH && first + second > (at[from * size + to] as number))
          at[from * size + to] = first + second;
      }
    }
  for (let index = 0; index < size; index++) if ((at[index * size + index] as number) > 0) return null;
  return { size, at };
}

/**
 * Does one more lag fit the net? If so the net is brought up to date.
 *
 * `net` is changed in place; `from` and `to` are its indices, `lag` a whole number of time units. Result: false, with
 * the net unusable, when the lag closes a positive cycle.
 * Source: definition of the longest path: every new one runs over the new lag once. Quadratic in the activities.
 * Example: earliest start 0 of b, a at 3 or later, lag a-b 4: b at 7 or later.
 */
export function tightenNet({ size, at }: LagNet, from: number, to: number, lag: number): boolean {
  if (lag <= (at[from * size + to] as number)) return true;
  if ((at[to * size + from] as number) + lag > 0) return false;
  const toRow = to * size;
  for (let head = 0; head < size; head++) {
    const before = at[head * size + from] as number;
    if (before === NO_PATH) continue;
    const reach = before + lag;
    const row = head * size;
    if (reach <= (at[row + to] as number)) continue;
    for (let tail = 0; tail < size; tail++) {
      const after = at[toRow + tail] as number;
      if (after !== NO_PATH && reach + after > (at[row + tail] as number)) at[row + tail] = reach + after;
    }
  }
  return true;
}
