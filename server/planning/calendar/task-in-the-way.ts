import { climateAt } from '../climate/climate-at.ts';
import { dryingDone } from '../climate/drying-done.ts';
import { type ApplyRefusal, mayApply } from '../climate/may-apply.ts';
import { formatDegrees } from '../display/format-degrees.ts';
import type { UnitSystem } from '../project-input.ts';
import { airWindows } from './air-windows.ts';
import type { CalendarTask } from './calendar-batch.ts';
import type { BlockFinding } from './calendar-blocks.ts';
import type { CalendarInput } from './calendar-input.ts';
import type { ShopJob, ShopTask } from './shop/shop-job.ts';
import { startRanges } from './shop/start-ranges.ts';

/**
 * What can a task not meet, whatever the other tasks do?
 *
 * @param input see calendar-input.ts
 * @param task, shopTask, job the task in both forms; minutes since midnight of day 0
 * @returns the first thing in the way; null when the task alone has a start
 *
 * Source: definition. Valid range: a task still to be done. Departures: the air is described at the start of the first
 * working window. Example: 200 minutes of sanding in windows of 120: `working-window`.
 */
export function taskInTheWay(
  input: CalendarInput,
  task: CalendarTask,
  shopTask: ShopTask,
  job: ShopJob,
): BlockFinding | null {
  const face = task.face === 'both' ? 'both faces' : `${task.face} face`;
  const name = `"${task.name || task.kind}" on the ${face} of batch ${task.batchId}`;
  const taskId = task.id;
  const longest = job.windows.reduce((most, span) => Math.max(most, span.toMinute - span.fromMinute), 0);
  if (task.times.handsOnMin > longest)
    return {
      kind: 'working-window',
      taskId,
      message: `${name} takes ${task.times.handsOnMin} minutes, but the longest working window has ${longest}.`,
    };

  const limits = task.coat?.facts ?? null;
  const air = limits === null ? null : airWindows(input.climate, limits, input.woodWarmerC, job.endMinute);
  if (startRanges(task.times, job.windows, air, job.stepMin).length === 0) {
    const first = job.windows[0]?.fromMinute ?? input.startMinute;
    const now = climateAt(input.climate, first);
    const refusal = limits === null ? undefined : mayApply(now, now.airC + input.woodWarmerC, limits)[0];
    const when = air?.length === 0 ? 'at any time' : 'long enough within working hours';
    const detail =
      refusal === undefined ? '' : ` At the first opening ${refusalText(refusal, input.units ?? 'metric')}.`;
    return {
      kind: 'air',
      taskId,
      message: `${name} cannot be laid: the shop's air is not within its limits ${when}.${detail}`,
    };
  }
  if (shopTask.ranges.length === 0 && shopTask.scuffedRanges.length === 0)
    return {
      kind: 'pin',
      taskId,
      message: `${name} is pinned to a time outside working hours, or when the air is not within its limits.`,
    };

  if (task.coat === null) return null;
  const { facts, handleDryMin } = task.coat;
  const drying = dryingDone(input.startMinute, handleDryMin, input.climate, facts, input.dryingRule);
  if (drying.state === 'dry') return null;
  const why = {
    'below-minimum-temperature': 'the shop is never warm enough',
    'air-too-damp': 'the air is too damp',
    'beyond-horizon': 'it would take more than 400 days',
  }[drying.reason];
  return { kind: 'drying', taskId, message: `${name} does not dry: ${why}.` };
}

function refusalText({ reason, value, limit }: ApplyRefusal, units: UnitSystem): string {
  switch (reason) {
    case 'air-too-cold':
      return `the air has ${degrees(value)} and the product needs at least ${degrees(limit)}`;
    case 'air-too-warm':
      return `the air has ${degrees(value)} and the product allows at most ${degrees(limit)}`;
    case 'air-too-damp':
      return `the humidity is ${value.toFixed(1)} % and the product allows at most ${limit} %`;
    case 'surface-too-cold':
      return `the wood has ${degrees(value)} and the product needs at least ${degrees(limit)}`;
    case 'surface-near-dew':
      return `the wood is ${formatDegrees(value, units, 'difference')} above the dew point and needs to be ${formatDegrees(limit, units, 'difference')} above it`;
  }

  function degrees(valueC: number): string {
    return formatDegrees(valueC, units, 'temperature');
  }
}
