import type { Change } from '../../db/change.ts';
import type { CalendarWayOut } from '../planning/calendar/calendar-plan.ts';
import { readClockTime } from '../planning/calendar/project/read-clock-time.ts';
import type { ProjectInput, ShopHours } from '../planning/project-input.ts';

const MIN_PER_HOUR = 60;
const MIN_PER_DAY = 1440;
/** What the settings take. */
const WARMEST_C = 60;
const DRIEST_PERCENT = 1;

/** The edits to a project that make a way out of its calendar real; empty where it is no setting of the project. */
export function wayOutChanges(
  { change, value, taskId }: CalendarWayOut,
  { settings, shopHours, daysOff, climateRows, pins, doneTasks }: ProjectInput,
): readonly Change[] {
  const set = (values: Readonly<Record<string, number | boolean>>): Change[] => [{ op: 'settings', values }];
  switch (change) {
    case 'drop-pin':
      return pins
        .filter((pin) => taskId === null || pin.taskId === taskId)
        .map(({ id }) => ({ op: 'delete', table: 'pins', id }));
    case 'longer-windows':
      return value === null ? [] : longerHours(shopHours, value);
    case 'open-days-off':
      return daysOff.map(({ id }) => ({ op: 'delete', table: 'daysOff', id }));
    case 'more-hands':
      return value === null ? [] : set({ hands: value });
    case 'larger-rack':
      return value === null ? [] : set({ rackM2: value });
    case 'smaller-batches':
      return value === null ? [] : set({ largestBatchM2: value });
    case 'warmer-wood':
      return value === null ? [] : set({ woodWarmerC: value });
    case 'sand-apart':
      return set({ sandsApart: true });
    case 'forget-done':
      return doneTasks.map(({ id }) => ({ op: 'delete', table: 'doneTasks', id }));
    case 'warmer-shop': {
      if (value === null) return [];
      const warmer = (c: number): number => Math.min(WARMEST_C, c + value);
      return [
        ...set({ dayC: warmer(settings.dayC), nightC: warmer(settings.nightC) }),
        ...climateRows.flatMap(({ id, temperatureC }): Change[] =>
          temperatureC === null
            ? []
            : [{ op: 'update', table: 'climateRows', id, values: { temperatureC: warmer(temperatureC) } }],
        ),
      ];
    }
    case 'drier-shop': {
      if (value === null) return [];
      const drier = (percent: number): number => Math.max(DRIEST_PERCENT, percent - value);
      return [
        ...set({ dayHumidity: drier(settings.dayHumidity), nightHumidity: drier(settings.nightHumidity) }),
        ...climateRows.flatMap(({ id, humidityPercent }): Change[] =>
          humidityPercent === null
            ? []
            : [
                {
                  op: 'update',
                  table: 'climateRows',
                  id,
                  values: { humidityPercent: drier(humidityPercent) },
                },
              ],
        ),
      ];
    }
    case 'longer-horizon':
      return [];
  }
}

/** As the way out was tried: the last window of a day ends later, up to midnight; the rest goes before the first. */
function longerHours(rows: readonly ShopHours[], minutes: number): readonly Change[] {
  const changes: Change[] = [];
  for (const weekday of new Set(rows.map((row) => row.weekday))) {
    const windows = rows
      .filter((row) => row.weekday === weekday)
      .flatMap(({ id, from, to }) => {
        const [fromMin, toMin] = [readClockTime(from), readClockTime(to)];
        return fromMin === null || toMin === null
          ? []
          : [{ id, fromMin, toMin: toMin === 0 ? MIN_PER_DAY : toMin }];
      })
      .sort((a, b) => a.fromMin - b.fromMin);
    const [first, last] = [windows[0], windows.at(-1)];
    if (first === undefined || last === undefined) continue;
    const toMin = Math.min(MIN_PER_DAY, last.toMin + minutes);
    const fromMin = Math.max(0, first.fromMin - (minutes - (toMin - last.toMin)));
    if (toMin !== last.toMin)
      changes.push({ op: 'update', table: 'shopHours', id: last.id, values: { to: clockText(toMin) } });
    if (fromMin !== first.fromMin)
      changes.push({ op: 'update', table: 'shopHours', id: first.id, values: { from: clockText(fromMin) } });
  }
  return changes;
}

function clockText(minute: number): string {
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${two(Math.floor(minute / MIN_PER_HOUR))}:${two(minute % MIN_PER_HOUR)}`;
}
