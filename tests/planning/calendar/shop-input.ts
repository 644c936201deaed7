import type {
  CalendarInput,
  CalendarPiece,
  CalendarRecipe,
  CalendarStep,
  CoatFacts,
} from '../../../server/planning/calendar/calendar-input.ts';
import { DEFAULT_DRYING_RULE } from '../../../server/planning/climate/drying-rule.ts';

export const HOUR = 60;
export const DAY = 24 * HOUR;

/** A minute of the calendar by day and clock. */
export const at = (day: number, hour: number, minute = 0): number => day * DAY + hour * HOUR + minute;

/** A shop in reference air (22 C, 50 %), where label minutes are clock minutes; open every day from 08:00 to 18:00. */
export function shopInput(changes: Partial<CalendarInput> = {}): CalendarInput {
  return {
    firstWeekday: 0,
    clockShifts: [],
    startMinute: 0,
    horizonDays: 60,
    stepMin: 5,
    hours: everyDay([8, 18]),
    daysOff: [],
    hands: 1,
    rackM2: null,
    largestBatchM2: null,
    climate: { kind: 'constant', air: { airC: 22, relativeHumidityPercent: 50 } },
    dryingRule: DEFAULT_DRYING_RULE,
    woodWarmerC: 0,
    sandsApart: false,
    recipes: [],
    pieces: [],
    pins: [],
    done: [],
    seed: 1,
    iterations: 300,
    ...changes,
  };
}

/** The same windows, in hours of the clock, on all seven days. */
export function everyDay(...windows: (readonly [number, number])[]): CalendarInput['hours'] {
  const day = windows.map(([from, to]) => ({ fromMin: from * HOUR, toMin: to * HOUR }));
  return Array.from({ length: 7 }, () => day);
}

/** An oil-based topcoat: touch dry 4 h, recoat from 24 h, dry to handle 24 h, cured 7 days. */
export function coatOf(changes: Partial<CoatFacts> = {}): CoatFacts {
  return {
    carrier: 'oil',
    touchDryMin: 4 * HOUR,
    handleDryMin: 24 * HOUR,
    cureMin: 7 * DAY,
    workingTimeMin: null,
    recoat: [{ fromMin: 24 * HOUR, toMin: null, scuff: false }],
    minTemperatureC: 10,
    maxTemperatureC: 35,
    maxHumidityPercent: 85,
    ...changes,
  };
}

export function stepOf(changes: Partial<CalendarStep> = {}): CalendarStep {
  const kind = changes.kind ?? 'topcoat';
  const dry = kind === 'sand' || kind === 'scuff' || kind === 'dust' || kind === 'cure';
  return {
    id: kind,
    kind,
    name: kind,
    coats: 1,
    method: 'brush',
    coat: dry ? null : coatOf(),
    materialMinute: 0,
    ...changes,
  };
}

export function recipeOf(
  steps: readonly CalendarStep[],
  changes: Partial<CalendarRecipe> = {},
): CalendarRecipe {
  return { id: 'r', name: 'recipe', faces: 'flip', steps, ...changes };
}

/** One panel of 0.3 m2 whose show face gets recipe `r`: 2 minutes by brush, 17 with set-up and clean-up. */
export function pieceOf(changes: Partial<CalendarPiece> = {}): CalendarPiece {
  return {
    id: 'p',
    name: 'panel',
    count: 1,
    showM2: 0.3,
    backM2: 0.3,
    edgeM2: 0,
    showRecipeId: 'r',
    backRecipeId: '',
    readyMinute: 0,
    batchName: '',
    ...changes,
  };
}
