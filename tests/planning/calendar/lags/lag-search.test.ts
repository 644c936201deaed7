import { describe, expect, it } from 'vitest';
import type { LagProblem } from '../../../../server/planning/calendar/lags/lag-problem.ts';
import { LagSearch } from '../../../../server/planning/calendar/lags/lag-search.ts';
import { seededRandom } from '../../../bench/seeded-random.ts';
import { brokenLags } from './broken-lags.ts';
import { leastMakespanByHand } from './least-makespan-by-hand.ts';
import { randomLagProblem } from './random-lag-problem.ts';

const solve = (problem: LagProblem, seed = 1, turns = 2000): LagSearch => {
  const search = new LagSearch(problem, seed);
  search.run(turns);
  return search;
};

/** One machine unless said otherwise. */
const machine = (durations: number[], lags: LagProblem['lags'] = []): LagProblem => ({
  durations,
  demands: durations.map(() => [1]),
  capacities: [1],
  lags,
});

describe('LagSearch', () => {
  it('puts rivals one after the other and proves it', () => {
    const search = solve(machine([4, 4, 4]));
    // 3 x 4 = 12 on one machine.
    expect([search.makespan, search.bound, search.state]).toEqual([12, 12, 'optimal']);
    expect(brokenLags(machine([4, 4, 4]), search.best ?? [])).toEqual([]);
  });

  it('waits with the first of two when the second must follow soon', () => {
    // b follows a by 5 to 6; c takes the machine for 5 and is wanted within 1 of the start: c 0-5, a 5-7, b 10-12. With
    // a first (0-2), b at 5 to 6, c would have to start by 1: impossible.
    const problem = machine(
      [2, 2, 5, 0],
      [
        { from: 0, to: 1, lag: 5 },
        { from: 1, to: 0, lag: -6 },
        { from: 3, to: 2, lag: 0 },
        { from: 2, to: 3, lag: -1 },
        { from: 0, to: 3, lag: -5 },
      ],
    );
    const search = solve(problem);
    expect(brokenLags(problem, search.best ?? [])).toEqual([]);
    expect(search.makespan).toBe(leastMakespanByHand(problem, 20));
  });

  it('names the ring of lags that contradict each other', () => {
    const search = solve(
      machine(
        [1, 1, 1],
        [
          { from: 0, to: 1, lag: 5 },
          { from: 1, to: 2, lag: 0 },
          { from: 2, to: 0, lag: -3 },
        ],
      ),
    );
    expect([search.state, search.best]).toEqual(['infeasible', null]);
    expect(search.ring).toHaveLength(3);
    // 5 + 0 - 3 = 2 more than nothing.
    expect(search.ring.reduce((sum, { lag }) => sum + lag, 0)).toBe(2);
    for (const [index, { to }] of search.ring.entries())
      expect(search.ring[(index + 1) % search.ring.length]?.from).toBe(to);
  });

  it('proves that nothing fits when lags are fine but the machine is not', () => {
    // Both must run within 3 of each other's start, each for 4, on one machine.
    const search = solve(
      machine(
        [4, 4],
        [
          { from: 0, to: 1, lag: -3 },
          { from: 1, to: 0, lag: -3 },
        ],
      ),
    );
    expect([search.state, search.ring]).toEqual(['infeasible', []]);
  });

  it('refuses an activity that alone needs more than there is', () => {
    expect(solve({ durations: [1], demands: [[3]], capacities: [2], lags: [] }).state).toBe('infeasible');
  });

  it('answers an empty problem with an empty schedule', () => {
    const search = solve({ durations: [], demands: [], capacities: [1], lags: [] });
    expect([search.best, search.makespan, search.state]).toEqual([[], 0, 'optimal']);
  });

  it('agrees with trying every schedule, on 400 small problems', () => {
    const random = seededRandom(7);
    let impossible = 0;
    for (let round = 0; round < 400; round++) {
      const problem = randomLagProblem(random, 5);
      const search = solve(problem, round);
      const least = leastMakespanByHand(problem, 18);
      if (least === null) {
        impossible++;
        expect([round, search.state, search.best]).toEqual([round, 'infeasible', null]);
        continue;
      }
      expect([round, search.state, search.makespan]).toEqual([round, 'optimal', least]);
      expect(brokenLags(problem, search.best ?? [])).toEqual([]);
    }
    expect(impossible).toBeGreaterThan(20);
  });

  it('gives the same schedule for the same seed', () => {
    const problem = randomLagProblem(seededRandom(11), 12);
    expect(solve(problem, 5, 20).best).toEqual(solve(problem, 5, 20).best);
  });

  it.each([
    ['a fraction', { durations: [1.5], demands: [[1]], capacities: [1], lags: [] }],
    ['a negative duration', { durations: [-1], demands: [[1]], capacities: [1], lags: [] }],
    ['a missing demand', { durations: [1], demands: [[]], capacities: [1], lags: [] }],
    [
      'a lag to nowhere',
      { durations: [1], demands: [[1]], capacities: [1], lags: [{ from: 0, to: 1, lag: 1 }] },
    ],
    [
      'a lag that is no number',
      { durations: [1], demands: [[1]], capacities: [1], lags: [{ from: 0, to: 0, lag: Number.NaN }] },
    ],
  ])('throws a RangeError for %s', (_, problem) => {
    expect(() => new LagSearch(problem, 1)).toThrow(RangeError);
  });
});
