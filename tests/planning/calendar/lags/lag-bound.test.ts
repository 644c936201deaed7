import { describe, expect, it } from 'vitest';
import { lagBound } from '../../../../server/planning/calendar/lags/lag-bound.ts';
import { longestLags } from '../../../../server/planning/calendar/lags/lag-net.ts';
import type { LagProblem } from '../../../../server/planning/calendar/lags/lag-problem.ts';

const boundOf = (problem: LagProblem): number => {
  const net = longestLags(problem);
  if (net === null) throw new Error('the lags of this test do not contradict each other');
  return lagBound(problem, net);
};

describe('lagBound', () => {
  it('is the longest path where nothing is scarce', () => {
    // 0 then 5 later 1, which takes 3: 8.
    expect(
      boundOf({
        durations: [1, 3],
        demands: [[0], [0]],
        capacities: [1],
        lags: [{ from: 0, to: 1, lag: 5 }],
      }),
    ).toBe(8);
  });

  it('counts the work of a scarce resource, rounded up', () => {
    // 3 activities of 3 units x 1 of 2: 9 / 2 = 4.5, so 5.
    expect(boundOf({ durations: [3, 3, 3], demands: [[1], [1], [1]], capacities: [2], lags: [] })).toBe(5);
  });

  it('adds the least that comes before and after the work', () => {
    // Activity 0 (2 units, no resource) precedes two of 4 on one machine, each followed by 5 more: 2 + 8 + 5 = 15.
    const lags = [
      { from: 0, to: 1, lag: 2 },
      { from: 0, to: 2, lag: 2 },
      { from: 1, to: 3, lag: 4 },
      { from: 2, to: 3, lag: 4 },
    ];
    expect(boundOf({ durations: [2, 4, 4, 5], demands: [[0], [1], [1], [0]], capacities: [1], lags })).toBe(
      15,
    );
  });

  it('is 0 for nothing to do', () => {
    expect(boundOf({ durations: [], demands: [], capacities: [1], lags: [] })).toBe(0);
  });
});
