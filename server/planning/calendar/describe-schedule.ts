import { dryingDone } from '../climate/drying-done.ts';
import type { CalendarBatch, CalendarTask } from './calendar-batch.ts';
import type { CalendarInput } from './calendar-input.ts';
import type { CalendarBatchPlan, CalendarTaskPlan, CalendarUncured } from './calendar-plan.ts';
import { type Hold, heldBy } from './held-by.ts';
import type { ShopJob, ShopSchedule, ShopTask } from './shop/shop-job.ts';
import { chainReady, handsTo, layFrom, layTo, timesIn } from './shop/shop-moments.ts';

/**
 * What does a schedule say in the words of the shop?
 *
 * @param input, batches what was planned
 * @param job, schedule the same for the searches; minutes since midnight of day 0
 * @returns tasks in order of start, and batches in their order
 *
 * Source: definition. Valid range: a schedule of the job. Departures: none.
 */
export function describeSchedule(
  input: CalendarInput,
  batches: readonly CalendarBatch[],
  job: ShopJob,
  { start, interval }: ShopSchedule,
): {
  readonly tasks: readonly CalendarTaskPlan[];
  readonly batches: readonly CalendarBatchPlan[];
  readonly uncured: readonly CalendarUncured[];
} {
  const doneIds = new Set(input.done.map(({ taskId }) => taskId));
  const pinnedIds = new Set(input.pins.map(({ taskId }) => taskId));
  const facts = batches.flatMap(({ tasks }) => tasks);
  const holds = heldBy(
    input,
    job,
    facts.map(({ id }) => id),
    { start, interval },
  );
  const uncured = new Map<string, CalendarUncured>();
  const tasks = facts.map((task, index) => describeTask(task, index));
  tasks.sort((left, right) => left.startMinute - right.startMinute || left.endMinute - right.endMinute);
  return { tasks, batches: batches.map(describeBatch), uncured: [...uncured.values()] };

  function describeTask(task: CalendarTask, index: number): CalendarTaskPlan {
    const shop = job.tasks[index] as ShopTask;
    const chosen = interval[index] as number;
    const begins = start[index] as number;
    const endMinute = handsTo(shop, begins, chosen);
    const last = layTo(shop, begins, chosen);
    const { times: _, scuffedTimes: __, coat: ___, releaseMinute: ____, waitsForCure: _____, ...same } = task;
    const state = doneIds.has(task.id)
      ? 'done'
      : shop.doneFrom !== null
        ? 'assumed'
        : pinnedIds.has(task.id)
          ? 'pinned'
          : 'planned';
    return {
      ...same,
      state,
      startMinute: begins,
      endMinute,
      handsOnMin: endMinute - begins,
      scuffFirst:
        shop.doneFrom === null &&
        timesIn(shop, chosen) !== shop.times &&
        shop.intervals[chosen]?.scuffed === true,
      layFromMinute: shop.isCoat ? layFrom(shop, begins, chosen) : null,
      layToMinute: shop.isCoat ? last : null,
      touchDryMinute: shop.isCoat ? shop.touch(last) : null,
      handleDryMinute: shop.isCoat ? shop.handle(last) : null,
      ...allowed(shop, chosen),
      heldBy: holdWords(holds[index] ?? null),
    };
  }

  function holdWords(hold: Hold | null): CalendarTaskPlan['heldBy'] {
    return hold === null ? null : { kind: hold.kind, taskId: facts[hold.other]?.id ?? null };
  }

  /** By drying, recoat rules, material and the task before; not by hours, air, hands and rack. */
  function allowed(
    shop: ShopTask,
    chosen: number,
  ): Pick<CalendarTaskPlan, 'allowedFromMinute' | 'allowedToMinute'> {
    let from = shop.releaseMinute;
    const before = job.tasks[shop.before];
    if (before !== undefined)
      from = Math.max(from, handsTo(before, start[shop.before] as number, interval[shop.before] as number));
    const coat = job.tasks[shop.coatBefore];
    if (coat === undefined || shop.doneFrom !== null)
      return { allowedFromMinute: from, allowedToMinute: null };
    const earlier = start[shop.coatBefore] as number;
    const last = layTo(coat, earlier, interval[shop.coatBefore] as number);
    const first = layFrom(coat, earlier, interval[shop.coatBefore] as number);
    if (shop.waits === 'touch') from = Math.max(from, coat.touch(last));
    if (shop.waits === 'handle') from = Math.max(from, coat.handle(last));
    if (shop.waitsForCure && coat.cure !== null) from = Math.max(from, coat.cure(last));
    const window = shop.intervals[chosen];
    if (window === undefined) return { allowedFromMinute: from, allowedToMinute: null };
    from = Math.max(from, window.opens(last), window.scuffed ? coat.touch(last) : 0);
    return { allowedFromMinute: from, allowedToMinute: window.closes?.(first) ?? null };
  }

  function describeBatch(batch: CalendarBatch, chain: number): CalendarBatchPlan {
    const { last, lastCoat } = job.chains[chain] as ShopJob['chains'][number];
    const end = handsTo(job.tasks[last] as ShopTask, start[last] as number, interval[last] as number);
    const coat = job.tasks[lastCoat];
    const stroke =
      coat === undefined ? end : layTo(coat, start[lastCoat] as number, interval[lastCoat] as number);
    return {
      id: batch.id,
      pieces: batch.pieces,
      footprintM2: batch.footprintM2,
      readyToHandleMinute: Math.max(end, coat?.handle(stroke) ?? end),
      readyToAssembleMinute: chainReady(job, chain, start, interval),
      curedMinute: curedOf(batch, chain),
    };
  }

  /** When every coat of the batch is cured; null when a curing time is not known or it never cures in this air. */
  function curedOf(batch: CalendarBatch, chain: number): number | null {
    const { first } = job.chains[chain] as ShopJob['chains'][number];
    let cured: number | null = 0;
    for (const [at, { coat, recipeId, stepId, name }] of batch.tasks.entries()) {
      if (coat === null) continue;
      const index = first + at;
      const stroke = layTo(job.tasks[index] as ShopTask, start[index] as number, interval[index] as number);
      const { cureMin } = coat.facts;
      const result =
        cureMin === null ? null : dryingDone(stroke, cureMin, input.climate, coat.facts, input.dryingRule);
      if (result?.state === 'dry') cured = cured === null ? null : Math.max(cured, result.minute);
      else {
        cured = null;
        uncured.set(stepId, { recipeId, stepId, name, because: result === null ? 'not-known' : 'never' });
      }
    }
    return cured;
  }
}
