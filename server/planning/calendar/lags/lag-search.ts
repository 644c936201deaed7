import { repeatableRandom } from '../../cutting/sheet-2d/repeatable-random.ts';
import { lagBound } from './lag-bound.ts';
import { lagConflict, type Settlement } from './lag-conflict.ts';
import { type LagNet, longestLags, tightenNet } from './lag-net.ts';
import { type Lag, type LagProblem, NO_PATH, requireLagProblem } from './lag-problem.ts';
import { positiveCycle } from './positive-cycle.ts';
import { propagateLags, type RivalPair, rivalPairs } from './propagate-lags.ts';
import { type LagRoom, lagRoom, serialLags } from './serial-lags.ts';

/** Tree nodes looked at per serial schedule built: about the same work for problems of twenty activities. */
const NODES_PER_TURN = 4;
/** Share of the keys that one squeaky-wheel step moves at random, and how far, as a share of the makespan. */
const NOISE_SHARE = 0.15;
const NOISE_REACH = 0.3;

/** A part of the tree not yet looked at: the parent's net, and what this part adds to it. */
interface OpenNode {
  readonly net: LagNet;
  readonly way: Settlement;
  /** Settlements dealt with by earlier siblings: here they do not hold. */
  readonly refused: readonly Settlement[];
}

/**
 * The least makespan of a lag problem, searched for in steps the caller counts.
 *
 * Times in the problem's units. `best` holds a schedule or null, never one that breaks a lag or a capacity; `bound` is
 * proven. `state`: `optimal` best = bound; `infeasible` proven, with `ring` where lags contradict each other;
 * `open` otherwise. Same problem and seed, same answer after the same steps.
 * Source: squeaky-wheel restarts over serial generation (D. Joslin, D. Clements, JAIR 10, 1999; T. Smith, J. Pyle, AAAI
 * 2004), turn about with branch and bound on minimal forbidden sets (B. De Reyck, W. Herroelen, European Journal of
 * Operational Research 111, 1998). Departures: a branch also carries the negation of its earlier siblings, which is a
 * maximum lag, so that no schedule is looked at twice. Example: three activities of 4 units on one machine: 12, optimal.
 */
export class LagSearch {
  best: readonly number[] | null = null;
  makespan = Number.POSITIVE_INFINITY;
  bound = 0;
  state: 'open' | 'optimal' | 'infeasible' = 'open';
  ring: readonly Lag[] = [];
  readonly #problem: LagProblem;
  readonly #rivals: readonly RivalPair[] = [];
  readonly #random: () => number;
  #root: LagNet | null = null;
  #room: LagRoom | null = null;
  #open: OpenNode[] = [];
  #started = false;
  #keys = new Float64Array(0);
  #keysMakespan = Number.POSITIVE_INFINITY;
  #tails: number[] = [];
  #horizon = 0;

  constructor(problem: LagProblem, seed: number) {
    requireLagProblem(problem);
    this.#problem = problem;
    this.#random = repeatableRandom(seed);
    this.#root = longestLags(problem);
    if (this.#root === null) {
      this.ring = positiveCycle(problem) ?? [];
      this.state = 'infeasible';
      return;
    }
    this.#rivals = rivalPairs(problem);
    this.#horizon = horizonOf(problem, this.#root);
    if (this.#tooNeedy() || !propagateLags(problem, this.#rivals, this.#root, this.#horizon)) {
      this.state = 'infeasible';
      return;
    }
    this.bound = lagBound(problem, this.#root);
    this.#room = lagRoom(problem, this.#root, this.#horizon + 1);
    this.#tails = tailsOf(problem, this.#root);
    this.#keys = Float64Array.from(this.#tails, (tail) => -tail);
    if (problem.durations.length === 0) this.#record([]);
  }

  /** Builds `turns` serial schedules and looks at four times as many tree nodes. True while there is more to do. */
  run(turns: number): boolean {
    for (let turn = 0; turn < turns && this.state === 'open'; turn++) {
      this.#squeak();
      for (let node = 0; node < NODES_PER_TURN && this.state === 'open'; node++) this.#lookAtNode();
    }
    return this.state === 'open';
  }

  #record(starts: ArrayLike<number>): void {
    const makespan = this.#problem.durations.reduce(
      (most, duration, index) => Math.max(most, duration + (starts[index] as number)),
      0,
    );
    if (makespan < this.makespan) {
      this.best = Array.from(starts);
      this.makespan = makespan;
    }
    if (this.makespan <= this.bound) this.state = 'optimal';
  }

  /** One serial schedule from the keys so far, changed: what ends late moves forward, and some at random. */
  #squeak(): void {
    const random = this.#random;
    const first = this.#keysMakespan === Number.POSITIVE_INFINITY;
    const reach = NOISE_REACH * (first ? this.bound : this.makespan);
    const keys = this.#keys.map((key) =>
      first && random() < 1 / 2 ? key : random() < NOISE_SHARE ? key + (random() - 1 / 2) * 2 * reach : key,
    );
    const starts = serialLags(this.#problem, this.#root as LagNet, this.#room as LagRoom, keys);
    if (starts === null) {
      if (first) this.#keys = keys;
      return;
    }
    this.#record(starts);
    const makespan = starts.reduce(
      (most, start, index) => Math.max(most, start + (this.#tails[index] as number)),
      0,
    );
    if (makespan > this.#keysMakespan * (1 + (random() < 1 / 10 ? 1 / 50 : 0))) return;
    this.#keysMakespan = makespan;
    for (const [index, start] of starts.entries())
      if (start + (this.#tails[index] as number) >= makespan)
        keys[index] = (keys[index] as number) - reach * random() * (1 / 4);
    this.#keys = keys;
  }

  #lookAtNode(): void {
    if (!this.#started) {
      this.#started = true;
      this.#expand(copyOf(this.#root as LagNet));
    } else {
      const node = this.#open.pop();
      if (node === undefined) {
        this.state = this.best === null ? 'infeasible' : 'optimal';
        this.bound = this.best === null ? this.bound : this.makespan;
        return;
      }
      const net = copyOf(node.net);
      if (this.#apply(net, node)) this.#expand(net);
    }
  }

  #apply(net: LagNet, { way, refused }: OpenNode): boolean {
    const { durations } = this.#problem;
    if (!tightenNet(net, way[0], way[1], durations[way[0]] as number)) return false;
    return refused.every(([first, second]) =>
      tightenNet(net, second, first, 1 - (durations[first] as number)),
    );
  }

  #expand(net: LagNet): void {
    const deadline = Math.min(this.#horizon, this.makespan - 1);
    if (!propagateLags(this.#problem, this.#rivals, net, deadline)) return;
    if (lagBound(this.#problem, net) > deadline) return;
    const ways = lagConflict(this.#problem, net);
    if (ways === null) {
      const origin = net.size - 1;
      this.#record(net.at.slice(origin * net.size, origin * net.size + origin));
      return;
    }
    for (let index = ways.length - 1; index >= 0; index--)
      this.#open.push({ net, way: ways[index] as Settlement, refused: ways.slice(0, index) });
  }

  #tooNeedy(): boolean {
    const { durations, demands, capacities } = this.#problem;
    return demands.some(
      (row, index) =>
        (durations[index] as number) > 0 &&
        row.some((need, resource) => need > (capacities[resource] as number)),
    );
  }
}

function copyOf({ size, at }: LagNet): LagNet {
  return { size, at: at.slice() };
}

/** Time by which some best schedule is over: every activity, or the longest lag out of it, in single file. */
function horizonOf({ durations, lags }: LagProblem, { size, at }: LagNet): number {
  const longest = [...durations];
  for (const { from, lag } of lags) longest[from] = Math.max(longest[from] as number, lag);
  let latest = 0;
  for (let index = 0; index < size - 1; index++)
    latest = Math.max(latest, at[(size - 1) * size + index] as number);
  return Math.max(
    latest,
    longest.reduce((sum, time) => sum + time, 0),
  );
}

function tailsOf({ durations }: LagProblem, { size, at }: LagNet): number[] {
  return durations.map((duration, index) => {
    let tail = duration;
    for (let next = 0; next < size - 1; next++) {
      const lag = at[index * size + next] as number;
      if (lag !== NO_PATH) tail = Math.max(tail, lag + (durations[next] as number));
    }
    return tail;
  });
}
