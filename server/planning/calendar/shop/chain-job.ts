import type { ShopChain, ShopJob } from './shop-job.ts';

/**
 * What is the job of one chain, as if the others were not there?
 *
 * @param job see shop-job.ts; minutes since midnight of day 0
 * @param chain which one
 * @returns a job of that chain's tasks, numbered from 0
 *
 * Source: definition. What it takes alone, it takes at least in company. Valid range: any job. Departures: none.
 */
export function chainJob(job: ShopJob, chain: number): ShopJob {
  const { first, last, lastCoat, ...rest } = job.chains[chain] as ShopChain;
  const shift = (index: number): number => (index < 0 ? -1 : index - first);
  return {
    ...job,
    tasks: job.tasks.slice(first, last + 1).map((task) => ({
      ...task,
      chain: 0,
      before: shift(task.before),
      coatBefore: shift(task.coatBefore),
      sandingBetween: shift(task.sandingBetween),
    })),
    chains: [{ ...rest, first: 0, last: last - first, lastCoat: shift(lastCoat), twin: -1 }],
  };
}
