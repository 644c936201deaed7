import type { TaskTimes } from '../calendar-batch.ts';
import type { ShopJob, ShopTask } from './shop-job.ts';

/**
 * Which times hold for a task in the recoat interval chosen for it?
 *
 * `interval`: index into the task's intervals, -1 for none chosen: then without scuff-sanding. Result: minutes from its
 * start. Source: definition.
 */
export function timesIn(task: ShopTask, interval: number): TaskTimes {
  return task.intervals[interval]?.scuffed === true ? task.scuffedTimes : task.times;
}

/** First stroke, or the start of dry work; minutes since midnight of day 0. Source: definition. */
export function layFrom(task: ShopTask, start: number, interval: number): number {
  return task.doneFrom ?? start + timesIn(task, interval).layFromMin;
}

/** Last stroke, or the end of dry work, which leaves at once; minutes since midnight of day 0. Source: definition. */
export function layTo(task: ShopTask, start: number, interval: number): number {
  return task.doneTo ?? start + timesIn(task, interval).layToMin;
}

/** Hands are free again; minutes since midnight of day 0. Source: definition. */
export function handsTo(task: ShopTask, start: number, interval: number): number {
  return task.doneTo ?? start + timesIn(task, interval).handsOnMin;
}

/**
 * When is a chain ready, if its last task starts and its last coat is laid as given?
 *
 * Minutes since midnight of day 0; Infinity when it never dries. Source: definition.
 */
export function chainReady(
  job: ShopJob,
  chain: number,
  start: ArrayLike<number>,
  interval: ArrayLike<number>,
): number {
  const { last, lastCoat, readyClock } = job.chains[chain] as ShopJob['chains'][number];
  const end = handsTo(job.tasks[last] as ShopTask, start[last] as number, interval[last] as number);
  if (readyClock === null) return end;
  const coat = job.tasks[lastCoat] as ShopTask;
  return Math.max(end, readyClock(layTo(coat, start[lastCoat] as number, interval[lastCoat] as number)));
}

/** When is the whole job ready? Minutes since midnight of day 0. Source: definition. */
export function jobReady(job: ShopJob, start: ArrayLike<number>, interval: ArrayLike<number>): number {
  let ready = 0;
  for (let chain = 0; chain < job.chains.length; chain++)
    ready = Math.max(ready, chainReady(job, chain, start, interval));
  return ready;
}
