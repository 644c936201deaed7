import type { LagNet } from './lag-net.ts';
import { type LagProblem, NO_PATH } from './lag-problem.ts';

/** Room in which schedules are built, kept between builds. `usage[r]` is what is taken of a resource per time unit. */
export interface LagRoom {
  readonly usage: readonly Int32Array[];
  readonly predecessors: readonly (readonly number[])[];
  readonly horizon: number;
}

/**
 * What does serial building need to know before it starts?
 *
 * `horizon`: a time, in the problem's units, by which everything must be over. Source: definition.
 */
export function lagRoom(problem: LagProblem, { size, at }: LagNet, horizon: number): LagRoom {
  const predecessors = problem.durations.map((_, index) => {
    const before: number[] = [];
    for (let other = 0; other < size - 1; other++) {
      const lag = at[other * size + index] as number;
      if (other !== index && (lag > 0 || (lag === 0 && (at[index * size + other] as number) < 0)))
        before.push(other);
    }
    return before;
  });
  return { usage: problem.capacities.map(() => new Int32Array(horizon)), predecessors, horizon };
}

/**
 * Which schedule comes of placing activities one at a time, each as early as it fits?
 *
 * @param problem, net, room see lag-problem.ts, lag-net.ts, lagRoom
 * @param keys of the activities whose predecessors are placed, the one with the lowest key goes next
 * @returns a start per activity, or null when the tries ran out or the horizon was reached; a schedule that is returned
 *   keeps every lag and every capacity
 *
 * Source: serial generation with unscheduling (B. Franck, K. Neumann, C. Schwindt, OR Spektrum 23, 2001): an activity
 * that fits only after its maximum lag pushes those it is tied to, and all that start with or after them are placed
 * again. Valid range: that of requireLagProblem. Departures: none.
 */
export function serialLags(
  problem: LagProblem,
  { size, at }: LagNet,
  room: LagRoom,
  keys: Float64Array,
): Int32Array | null {
  const count = size - 1;
  const { durations, demands, capacities } = problem;
  const { usage, predecessors, horizon } = room;
  for (const line of usage) line.fill(0);
  const start = new Int32Array(count).fill(-1);
  const release = new Int32Array(count);
  for (let index = 0; index < count; index++) release[index] = at[count * size + index] as number;
  let placed = 0;
  let tries = 2 * count + 10;

  while (placed < count) {
    const next = nextActivity();
    let earliest = release[next] as number;
    let latest = Math.min(
      horizon - (durations[next] as number),
      at[next * size + count] === NO_PATH ? horizon : -(at[next * size + count] as number),
    );
    const hardLatest = latest;
    for (let other = 0; other < count; other++) {
      const begun = start[other] as number;
      if (begun < 0) continue;
      const lag = at[other * size + next] as number;
      if (lag !== NO_PATH && begun + lag > earliest) earliest = begun + lag;
      const back = at[next * size + other] as number;
      if (back !== NO_PATH && begun - back < latest) latest = begun - back;
    }
    const fit = earliestFit(next, earliest, hardLatest);
    if (fit < 0) return null;
    if (fit <= latest) {
      start[next] = fit;
      placed++;
      occupy(next, fit, 1);
      continue;
    }
    if (tries-- <= 0) return null;
    pushTied(next, fit);
  }
  return start;

  function nextActivity(): number {
    let best = -1;
    for (let index = 0; index < count; index++) {
      if ((start[index] as number) >= 0) continue;
      if (best >= 0 && (keys[index] as number) >= (keys[best] as number)) continue;
      if ((predecessors[index] as readonly number[]).every((before) => (start[before] as number) >= 0))
        best = index;
    }
    return best;
  }

  function earliestFit(activity: number, from: number, to: number): number {
    const duration = durations[activity] as number;
    const needs = demands[activity] as readonly number[];
    for (let resource = 0; resource < needs.length; resource++)
      if (duration > 0 && (needs[resource] as number) > (capacities[resource] as number)) return -1;
    let begin = from;
    let time = from;
    while (begin <= to && time < begin + duration) {
      for (let resource = 0; resource < needs.length; resource++) {
        const need = needs[resource] as number;
        const taken = (usage[resource] as Int32Array)[time] as number;
        if (need > 0 && taken + need > (capacities[resource] as number)) {
          begin = time + 1;
          break;
        }
      }
      time++;
      if (time < begin) time = begin;
    }
    return begin <= to ? begin : -1;
  }

  function occupy(activity: number, from: number, sign: number): void {
    const needs = demands[activity] as readonly number[];
    const end = from + (durations[activity] as number);
    for (let resource = 0; resource < needs.length; resource++) {
      const need = (needs[resource] as number) * sign;
      if (need === 0) continue;
      const line = usage[resource] as Int32Array;
      for (let time = from; time < end; time++) line[time] = (line[time] as number) + need;
    }
  }

  /** Raises the release of every placed activity that `late` cannot follow in time, and unplaces from the first on. */
  function pushTied(late: number, fit: number): void {
    let first = horizon;
    for (let other = 0; other < count; other++) {
      const begun = start[other] as number;
      const back = at[late * size + other] as number;
      if (begun < 0 || back === NO_PATH || begun - back >= fit) continue;
      if (fit + back > (release[other] as number)) release[other] = fit + back;
      if (begun < first) first = begun;
    }
    for (let other = 0; other < count; other++) {
      if ((start[other] as number) < first) continue;
      occupy(other, start[other] as number, -1);
      start[other] = -1;
      placed--;
    }
  }
}
