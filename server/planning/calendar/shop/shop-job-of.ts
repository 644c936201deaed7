import { MINUTES_PER_DAY } from '../../climate/constants.ts';
import type { ShopClimate } from '../../climate/shop-climate.ts';
import { airWindows } from '../air-windows.ts';
import type { CalendarBatch, CalendarTask, TaskTimes } from '../calendar-batch.ts';
import type { CalendarInput, CoatFacts } from '../calendar-input.ts';
import { realMinute } from '../real-minute.ts';
import { type MinuteSpan, workingWindows } from '../working-windows.ts';
import { dryingClocks } from './drying-clock.ts';
import { fastestDrying } from './fastest-drying.ts';
import type { ShopChain, ShopInterval, ShopJob, ShopTask } from './shop-job.ts';
import { type StartRange, startRanges } from './start-ranges.ts';

/**
 * What do the searches have to schedule?
 *
 * @param input see calendar-input.ts
 * @param batches from calendarTasks
 * @returns chains of tasks with their clocks and allowed starts, minutes since midnight of day 0
 *
 * Source: the rules of design: drying through dryingDone, air through mayApply. Between two coats on one face the later
 * starts in a recoat interval of the earlier: it opens for the whole coat counted from the last stroke, and closes
 * counted from the first. Both ends are label minutes that pass with drying, a rule of ours. Sanding between them must
 * fall into the same interval, and like all sanding waits until the coat is touch dry. A change of face, and work after
 * the last coat, wait until it is dry to handle. Valid range: that of the climate functions. Departures: none.
 */
export function shopJobOf(input: CalendarInput, batches: readonly CalendarBatch[]): ShopJob {
  const windows = workingWindows(input);
  const endMinute = realMinute(input.horizonDays * MINUTES_PER_DAY, input.clockShifts);
  const clockOf = dryingClocks(input.climate, input.dryingRule);
  const airOf = rememberedAir(input.climate, input.woodWarmerC, endMinute);
  const ranges = rememberedRanges(windows, input.stepMin);
  const pins = new Map(input.pins.map(({ taskId, startMinute }) => [taskId, startMinute]));
  const done = new Map(input.done.map((fact) => [fact.taskId, fact]));
  const fastest = new Map<string, number>();
  const tasks: ShopTask[] = [];
  const chains: ShopChain[] = [];
  const keys: string[] = [];

  for (const [chain, batch] of batches.entries()) {
    const first = tasks.length;
    const lastDone = batch.tasks.findLastIndex(({ id }) => done.has(id));
    for (const [index, task] of batch.tasks.entries())
      tasks.push(shopTask(batch, chain, first, index, task, lastDone));
    const lastCoat = batch.tasks.findLastIndex(({ coat }) => coat !== null);
    const coat = batch.tasks[lastCoat]?.coat ?? null;
    const cureMin = batch.curesAtEnd ? (coat?.facts.cureMin ?? null) : null;
    const untouched = batch.tasks.every(({ id }) => !pins.has(id) && !done.has(id));
    const key = untouched ? twinKey(batch) : batch.id;
    keys.push(key);
    chains.push({
      first,
      last: tasks.length - 1,
      footprintM2: batch.footprintM2,
      lastCoat: lastCoat < 0 ? -1 : first + lastCoat,
      readyClock: coat === null ? null : clockOf(coat.facts, cureMin ?? coat.handleDryMin),
      twin: keys.lastIndexOf(key, chain - 1 < 0 ? Number.NEGATIVE_INFINITY : chain - 1),
    });
  }
  return {
    tasks,
    chains,
    windows,
    hands: input.hands,
    rackM2: input.rackM2 ?? Number.POSITIVE_INFINITY,
    sandsApart: input.sandsApart,
    apartMin: input.vapour?.apartMin ?? 0,
    stepMin: input.stepMin,
    startMinute: input.startMinute,
    endMinute,
  };

  function shopTask(
    batch: CalendarBatch,
    chain: number,
    first: number,
    index: number,
    task: CalendarTask,
    lastDone: number,
  ): ShopTask {
    const coatAt = batch.tasks.slice(0, index).findLastIndex(({ coat }) => coat !== null);
    const coatBefore = batch.tasks[coatAt];
    const earlier = coatBefore?.coat ?? null;
    const between = batch.tasks.slice(coatAt + 1, index);
    const sanding =
      earlier === null ? -1 : between.findIndex(({ kind }) => kind === 'sand' || kind === 'scuff');
    const sameFace = coatBefore?.face === task.face;
    const coatFollows = batch.tasks
      .slice(index + 1)
      .some(({ coat, face }) => coat !== null && face === task.face);
    let waits: ShopTask['waits'] = 'none';
    if (earlier !== null) {
      if (!sameFace) waits = 'handle';
      else if (task.coat !== null) waits = 'recoat';
      else waits = coatFollows ? 'touch' : 'handle';
    }
    const intervals: ShopInterval[] =
      earlier === null || waits !== 'recoat'
        ? []
        : earlier.recoat
            .map((interval, at) => ({ ...interval, at }))
            .sort((left, right) => left.fromMin - right.fromMin)
            .map(({ fromMin, toMin, scuff, at }) => ({
              opens: clockOf(earlier.facts, fromMin),
              closes: toMin === null ? null : clockOf(earlier.facts, toMin),
              scuffed: scuff && sanding < 0,
              index: at,
            }));
    const coat = task.coat;
    const facts = coat?.facts ?? NO_FACTS;
    const fact = done.get(task.id);
    const skipped = fact === undefined && index < lastDone;
    const skippedAt = skipped
      ? (done.get((batch.tasks[lastDone] as CalendarTask).id)?.startMinute ?? 0)
      : null;
    const pin = pins.get(task.id);
    const air = coat === null ? null : airOf(facts);
    const untouched = fact === undefined && !skipped && pin === undefined;
    return {
      chain,
      sameAs: untouched ? `${task.recipeId}/${task.face}/${task.stepId}/${task.number}` : task.id,
      before: index === 0 ? -1 : first + index - 1,
      coatBefore: coatAt < 0 ? -1 : first + coatAt,
      waits,
      waitsForCure: task.waitsForCure,
      intervals,
      sandingBetween: sanding < 0 || waits !== 'recoat' ? -1 : first + coatAt + 1 + sanding,
      times: task.times,
      scuffedTimes: task.scuffedTimes,
      ranges: pinned(ranges(task.times, air), pin, task.times, air),
      scuffedRanges: pinned(ranges(task.scuffedTimes, air), pin, task.scuffedTimes, air),
      releaseMinute: Math.max(task.releaseMinute, input.startMinute),
      isCoat: coat !== null,
      hasVapour: coat !== null && input.vapour?.mostM2[task.stepId] !== undefined,
      leastRackMin: leastRackMin(batch, index),
      touch: clockOf(facts, coat?.touchDryMin ?? 0),
      handle: clockOf(facts, coat?.handleDryMin ?? 0),
      cure: facts.cureMin === null ? null : clockOf(facts, facts.cureMin),
      doneFrom: fact?.startMinute ?? skippedAt,
      doneTo: fact?.endMinute ?? skippedAt,
    };
  }

  /** Until dry to handle, or until the next coat may come, in the best air there is. */
  function leastRackMin(batch: CalendarBatch, index: number): number {
    const task = batch.tasks[index];
    if (task?.coat == null) return 0;
    const next = batch.tasks.slice(index + 1).find(({ coat }) => coat !== null);
    const opens = Math.min(...task.coat.recoat.map(({ fromMin }) => fromMin));
    const label = next?.face === task.face ? Math.min(opens, task.coat.handleDryMin) : task.coat.handleDryMin;
    const rate = fastestOf(task.coat.facts);
    return task.times.layToMin - task.times.layFromMin + (rate > 0 ? label / rate : 0);
  }

  function fastestOf(facts: CoatFacts): number {
    const key = `${facts.carrier} ${facts.minTemperatureC}`;
    const rate = fastest.get(key) ?? fastestDrying(input.climate, input.dryingRule, facts);
    fastest.set(key, rate);
    return rate;
  }

  /** With a pin, the pinned minute alone, if hours and air allow it. */
  function pinned(
    free: readonly StartRange[],
    pin: number | undefined,
    times: TaskTimes,
    air: readonly MinuteSpan[] | null,
  ): readonly StartRange[] {
    if (pin === undefined) return free;
    return startRanges(times, windows, air, 1)
      .filter(({ first, last }) => first <= pin && pin <= last)
      .map(({ window }) => ({ first: pin, last: pin, window }));
  }
}

const NO_FACTS: CoatFacts = {
  carrier: null,
  touchDryMin: null,
  handleDryMin: null,
  cureMin: null,
  workingTimeMin: null,
  recoat: [],
  minTemperatureC: null,
  maxTemperatureC: null,
  maxHumidityPercent: null,
};

/** Equal for batches that pass the same steps with the same areas at the same earliest times. */
function twinKey({ id: _, pieces: __, tasks, ...rest }: CalendarBatch): string {
  return JSON.stringify([rest, tasks.map(({ id: ___, batchId: ____, ...task }) => task)]);
}

function rememberedAir(
  climate: ShopClimate,
  woodWarmerC: number,
  endMinute: number,
): (facts: CoatFacts) => readonly MinuteSpan[] {
  const known = new Map<string, readonly MinuteSpan[]>();
  return (facts) => {
    const key = `${facts.minTemperatureC} ${facts.maxTemperatureC} ${facts.maxHumidityPercent}`;
    const found = known.get(key) ?? airWindows(climate, facts, woodWarmerC, endMinute);
    known.set(key, found);
    return found;
  };
}

function rememberedRanges(
  windows: readonly MinuteSpan[],
  stepMin: number,
): (times: TaskTimes, air: readonly MinuteSpan[] | null) => readonly StartRange[] {
  const known = new Map<readonly MinuteSpan[] | null, Map<string, readonly StartRange[]>>();
  return (times, air) => {
    const ofAir = known.get(air) ?? new Map<string, readonly StartRange[]>();
    known.set(air, ofAir);
    const key = `${times.layFromMin} ${times.layToMin} ${times.handsOnMin}`;
    const found = ofAir.get(key) ?? startRanges(times, windows, air, stepMin);
    ofAir.set(key, found);
    return found;
  };
}
