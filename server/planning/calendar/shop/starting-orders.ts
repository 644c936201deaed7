import type { ShopBound } from './shop-bound.ts';
import type { ShopJob } from './shop-job.ts';

/** How far chains start one behind the other in starting orders, as shares of one chain's hands-on time. */
const STAGGERS = [1 / 4, 1 / 2, 1, 2, 4];
/** The same where keys are minutes; below 0 for the largest last. */
const TIMED_STAGGERS = [0, 1 / 2, 1, -1 / 2];

/** Keys by task, as in SerialChoices. */
export interface StartingOrder {
  readonly keys: Float64Array;
  readonly byTime: boolean;
}

/**
 * In which orders does the search begin?
 *
 * @param job see shop-job.ts; minutes since midnight of day 0
 * @param bound when each chain would start and be ready alone
 * @returns keys: longest way to go first, step by step, batch by batch, as each chain would alone, and chains one behind
 *   the other by more or less of what one keeps the hands, largest first or last
 *
 * Source: priority rules of serial generation (R. Kolisch, European Journal of Operational Research 90, 1996); the
 * staggering is a rule of ours. Valid range: any job. Departures: none.
 */
export function startingOrders(job: ShopJob, { aloneStart, aloneReady }: ShopBound): StartingOrder[] {
  const { tasks, chains } = job;
  const chainOf = (index: number): number => tasks[index]?.chain ?? 0;
  const position = (index: number): number => index - (chains[chainOf(index)]?.first ?? 0);
  const alone = (index: number): number => aloneStart[index] as number;
  const work = tasks.reduce((sum, { times }) => sum + times.handsOnMin, 0) / Math.max(1, chains.length);
  const bySize = chains
    .map((chain, index) => ({ index, size: tasks[chain.last]?.times.handsOnMin ?? 0 }))
    .sort((left, right) => right.size - left.size)
    .map(({ index }) => index);
  const rank = chains.map((_, chain) => bySize.indexOf(chain));
  const behind = (index: number): number => work * (rank[chainOf(index)] as number);

  const inOrder: ((index: number) => number)[] = [
    (index) => alone(index) - (aloneReady[chainOf(index)] as number),
    (index) => position(index) * chains.length + chainOf(index),
    (index) => index,
    alone,
    (index) => -position(index) * chains.length + chainOf(index),
    ...STAGGERS.flatMap((share) => [
      (index: number) => alone(index) + share * behind(index),
      (index: number) => alone(index) - share * behind(index),
    ]),
  ];
  const inTime = TIMED_STAGGERS.map((share) => (index: number) => share * behind(index));
  return [
    ...inOrder.map((keyOf) => ({ keys: keysOf(keyOf), byTime: false })),
    ...inTime.map((keyOf) => ({ keys: keysOf(keyOf), byTime: true })),
  ];

  function keysOf(keyOf: (index: number) => number): Float64Array {
    return Float64Array.from(tasks, (_, index) => keyOf(index));
  }
}
