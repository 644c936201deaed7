import { type LagNet, tightenNet } from './lag-net.ts';
import type { LagProblem } from './lag-problem.ts';

/** Two activities that can never run at the same time, because together they need more than there is. */
export type RivalPair = readonly [number, number];

/**
 * Which pairs of activities can never run at the same time?
 *
 * Times and demands of `problem`: see lag-problem.ts. Source: definition.
 */
export function rivalPairs({ durations, demands, capacities }: LagProblem): RivalPair[] {
  const pairs: RivalPair[] = [];
  for (let left = 0; left < durations.length; left++)
    for (let right = left + 1; right < durations.length; right++) {
      const both = capacities.some(
        (capacity, resource) =>
          (demands[left]?.[resource] as number) + (demands[right]?.[resource] as number) > capacity,
      );
      if (both && (durations[left] as number) > 0 && (durations[right] as number) > 0)
        pairs.push([left, right]);
    }
  return pairs;
}

/**
 * What follows for the net when everything must be over by a deadline?
 *
 * @param problem, rivals see lag-problem.ts, rivalPairs
 * @param net changed in place
 * @param deadline time units by which every activity is over
 * @returns false when no schedule keeps the net and the deadline; true says nothing but that none was ruled out
 *
 * Source: immediate selection (J. Carlier, E. Pinson, Management Science 35, 1989): of two rivals the one that cannot
 * go first goes second; and the timetable argument: where latest start is before earliest end, an activity runs for
 * certain (P. Baptiste, C. Le Pape, W. Nuijten, Constraint-Based Scheduling, 2001, section 2.1). Valid range: that of
 * requireLagProblem. Departures: none.
 */
export function propagateLags(
  problem: LagProblem,
  rivals: readonly RivalPair[],
  net: LagNet,
  deadline: number,
): boolean {
  const { durations } = problem;
  const { size, at } = net;
  const origin = size - 1;
  for (let index = 0; index < origin; index++)
    if (!tightenNet(net, index, origin, (durations[index] as number) - deadline)) return false;

  let changed = true;
  while (changed) {
    changed = false;
    for (const [left, right] of rivals) {
      const leftFirst = (at[right * size + left] as number) + (durations[left] as number) <= 0;
      const rightFirst = (at[left * size + right] as number) + (durations[right] as number) <= 0;
      if (leftFirst && rightFirst) continue;
      if (!leftFirst && !rightFirst) return false;
      const [first, second] = leftFirst ? [left, right] : [right, left];
      const gap = durations[first] as number;
      if ((at[first * size + second] as number) >= gap) continue;
      if (!tightenNet(net, first, second, gap)) return false;
      changed = true;
    }
    if (changed) continue;
    const table = timetable(problem, net, deadline);
    if (table === 'impossible') return false;
    changed = table === 'moved';
  }
  return true;
}

/** One round of timetable reasoning over every resource. */
function timetable(problem: LagProblem, net: LagNet, deadline: number): 'impossible' | 'moved' | 'still' {
  const { durations, demands, capacities } = problem;
  const { size, at } = net;
  const origin = size - 1;
  let moved = false;
  for (const [resource, capacity] of capacities.entries()) {
    const surely = new Int32Array(deadline + 1);
    let any = false;
    for (let index = 0; index < origin; index++) {
      const need = demands[index]?.[resource] as number;
      const from = -(at[index * size + origin] as number);
      const to = (at[origin * size + index] as number) + (durations[index] as number);
      if (need === 0 || from >= to) continue;
      any = true;
      for (let time = from; time < to; time++) {
        surely[time] = (surely[time] as number) + need;
        if ((surely[time] as number) > capacity) return 'impossible';
      }
    }
    if (!any) continue;
    for (let index = 0; index < origin; index++) {
      const need = demands[index]?.[resource] as number;
      const duration = durations[index] as number;
      if (need === 0 || duration === 0) continue;
      const earliest = at[origin * size + index] as number;
      const latest = -(at[index * size + origin] as number);
      if (earliest === latest) continue;
      const blocked = (time: number): boolean => {
        const own = time >= latest && time < earliest + duration ? need : 0;
        return (surely[time] as number) - own + need > capacity;
      };
      const raised = firstRun(earliest, latest, duration, 1, blocked);
      const lowered = firstRun(latest, earliest, duration, -1, blocked);
      if (raised === null || lowered === null) return 'impossible';
      if (raised === earliest && lowered === latest) continue;
      moved = true;
      if (!tightenNet(net, origin, index, raised) || !tightenNet(net, index, origin, -lowered))
        return 'impossible';
    }
  }
  return moved ? 'moved' : 'still';
}

/** First start from `from` towards `to` whose whole run is free; null when there is none. */
function firstRun(
  from: number,
  to: number,
  duration: number,
  step: 1 | -1,
  blocked: (time: number) => boolean,
): number | null {
  let start = from;
  while (step > 0 ? start <= to : start >= to) {
    let clear = true;
    // Look from the far side, so that a blocked moment skips every start that would still cover it.
    for (let shift = 0; shift < duration; shift++) {
      const time = step > 0 ? start + duration - 1 - shift : start + shift;
      if (!blocked(time)) continue;
      start = step > 0 ? time + 1 : time - duration;
      clear = false;
      break;
    }
    if (clear) return start;
  }
  return null;
}
