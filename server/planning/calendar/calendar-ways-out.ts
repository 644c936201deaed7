import { MINUTES_PER_DAY } from '../climate/constants.ts';
import { formatArea } from '../display/format-area.ts';
import { formatDegrees } from '../display/format-degrees.ts';
import type { CalendarInput } from './calendar-input.ts';
import type { CalendarWayOut } from './calendar-plan.ts';
import { calendarTasks } from './calendar-tasks.ts';
import { changedClimate } from './changed-climate.ts';
import { MOST_HORIZON_DAYS } from './constants.ts';
import { solveCalendar } from './solve-calendar.ts';

interface Trial {
  readonly change: CalendarWayOut['change'];
  readonly value: number | null;
  readonly taskId: string | null;
  readonly message: string;
  readonly input: CalendarInput;
}

/** Steps in which hours, temperature and humidity are changed until a plan fits. Ours. */
const LONGER_BY_MIN = [60, 120, 240, 480, 720];
const WARMER_BY_C = [2, 5, 10, 15];
const DRIER_BY_PERCENT = [10, 20, 30];

/**
 * Which single change to the input makes a plan possible?
 *
 * @param input for which no plan was found; minutes since midnight of day 0
 * @returns the smallest change that works of each kind, each planned with the change before it is offered
 *
 * Source: a rule of ours. Valid range: any input. Departures: changes are tried in steps, so a smaller one may also do.
 */
export function calendarWaysOut(input: CalendarInput): CalendarWayOut[] {
  const offers: CalendarWayOut[] = [];
  for (const trials of trialsOf(input))
    for (const { change, value, taskId, message, input: changed } of trials) {
      const solved = solveCalendar(changed, 'any');
      if (solved.schedule === null) continue;
      offers.push({ change, value, taskId, message, readyToAssembleMinute: solved.readyMinute });
      break;
    }
  return offers;
}

/** Per kind of change, the trials from the smallest to the largest. */
function trialsOf(input: CalendarInput): Trial[][] {
  const { pins, done, daysOff, hands, rackM2, climate, woodWarmerC, horizonDays, hours } = input;
  const { units = 'metric' } = input;
  const trial = (
    change: Trial['change'],
    value: number | null,
    message: string,
    changes: Partial<CalendarInput>,
    taskId: string | null = null,
  ): Trial => ({
    change,
    value,
    taskId,
    message,
    input: { ...input, ...changes },
  });
  const largest = calendarTasks(input).batches.reduce((most, batch) => Math.max(most, batch.footprintM2), 0);
  return [
    pins.map((pin) =>
      trial(
        'drop-pin',
        null,
        `Unpin "${pin.taskId}".`,
        { pins: pins.filter((other) => other !== pin) },
        pin.taskId,
      ),
    ),
    pins.length > 1 ? [trial('drop-pin', null, 'Unpin everything.', { pins: [] })] : [],
    LONGER_BY_MIN.map((minutes) =>
      trial('longer-windows', minutes, `Work ${minutes / 60} h longer on every working day.`, {
        hours: hours.map((windows) => longer(windows, minutes)),
      }),
    ),
    daysOff.length > 0 ? [trial('open-days-off', null, 'Work on the days off too.', { daysOff: [] })] : [],
    [trial('more-hands', hands + 1, `Work with ${hands + 1} people.`, { hands: hands + 1 })],
    rackM2 === null
      ? []
      : [Math.max(rackM2, Math.ceil(largest * 10) / 10), rackM2 * 2, Math.max(rackM2, largest) * 4]
          .filter((areaM2) => areaM2 > rackM2)
          .map((areaM2) =>
            trial('larger-rack', areaM2, `Make room to dry ${formatArea(areaM2, { units })}.`, {
              rackM2: areaM2,
            }),
          ),
    [largest / 2, largest / 4]
      .filter((areaM2) => areaM2 > 0)
      .map((areaM2) =>
        trial(
          'smaller-batches',
          areaM2,
          `Coat at most ${formatArea(areaM2, { units })} of faces in one go.`,
          {
            largestBatchM2: areaM2,
          },
        ),
      ),
    WARMER_BY_C.map((warmer) =>
      trial('warmer-shop', warmer, `Keep the shop ${formatDegrees(warmer, units, 'difference')} warmer.`, {
        climate: changedClimate(climate, warmer, 0),
      }),
    ),
    DRIER_BY_PERCENT.map((drier) =>
      trial('drier-shop', drier, `Bring the humidity down by ${drier} points.`, {
        climate: changedClimate(climate, 0, drier),
      }),
    ),
    woodWarmerC < 0
      ? [
          trial('warmer-wood', 0, 'Bring the parts in early, until they are as warm as the air.', {
            woodWarmerC: 0,
          }),
        ]
      : [],
    input.sandsApart ? [] : [trial('sand-apart', null, 'Sand in another room.', { sandsApart: true })],
    horizonDays < MOST_HORIZON_DAYS
      ? [Math.min(MOST_HORIZON_DAYS, horizonDays * 2), MOST_HORIZON_DAYS].map((days) =>
          trial('longer-horizon', days, `Allow ${days} days.`, { horizonDays: days }),
        )
      : [],
    done.length > 0
      ? [trial('forget-done', null, 'Strip the coats laid so far and start again.', { done: [] })]
      : [],
  ];
}

/** The last window of the day ends later, up to midnight, and what is then left over is put before the first. */
function longer(windows: CalendarInput['hours'][number], minutes: number): CalendarInput['hours'][number] {
  const sorted = [...windows].sort((left, right) => left.fromMin - right.fromMin);
  const last = sorted.at(-1);
  const first = sorted[0];
  if (last === undefined || first === undefined) return windows;
  const toMin = Math.min(MINUTES_PER_DAY, last.toMin + minutes);
  const left = minutes - (toMin - last.toMin);
  sorted[sorted.length - 1] = { ...last, toMin };
  sorted[0] = { ...(sorted[0] ?? first), fromMin: Math.max(0, first.fromMin - left) };
  return sorted;
}
