import type {
  CalendarInput,
  CalendarPiece,
  CalendarRecipe,
  CalendarStep,
  CoatFacts,
} from '../../../server/planning/calendar/calendar-input.ts';
import type { ShopClimate } from '../../../server/planning/climate/shop-climate.ts';
import type { RecoatInterval } from '../../../server/planning/product.ts';
import { coatOf, HOUR, pieceOf, recipeOf, shopInput, stepOf } from './shop-input.ts';

/**
 * A random finishing job. `small`: at most six tasks on a grid of one hour within three days, so that every schedule can
 * be tried; else up to some twenty tasks on a grid of five minutes.
 */
export function randomShop(random: () => number, small: boolean): CalendarInput {
  const whole = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
  const one = <T>(...choices: readonly T[]): T => choices[whole(0, choices.length - 1)] as T;

  const recoat = (): RecoatInterval[] => {
    const opens = whole(1, 6) * HOUR;
    const list: RecoatInterval[][] = [
      [{ fromMin: opens, toMin: null, scuff: false }],
      [
        { fromMin: 0, toMin: 2 * HOUR, scuff: false },
        { fromMin: whole(6, 30) * HOUR, toMin: null, scuff: true },
      ],
      [
        { fromMin: opens, toMin: opens + whole(2, 12) * HOUR, scuff: false },
        { fromMin: whole(18, 30) * HOUR, toMin: null, scuff: true },
      ],
      [{ fromMin: HOUR / 2, toMin: whole(2, 8) * HOUR, scuff: false }],
    ];
    return one(...list, list[0] as RecoatInterval[]);
  };
  const facts = (): CoatFacts => {
    const touchDryMin = whole(1, 4) * (HOUR / 2);
    return coatOf({
      carrier: one('oil', 'water', null),
      touchDryMin: one(touchDryMin, touchDryMin, null),
      handleDryMin: touchDryMin + whole(1, 10) * HOUR,
      cureMin: one(whole(1, 3) * 24 * HOUR, null),
      recoat: recoat(),
      minTemperatureC: one(10, 14, null),
    });
  };
  const recipe = (id: string, most: number): CalendarRecipe => {
    const steps: CalendarStep[] = [];
    if (most > 1 && random() < 0.3) steps.push(stepOf({ id: `${id}a`, kind: 'sand' }));
    const coats = whole(1, Math.max(1, most - steps.length));
    const coat = facts();
    for (let number = 0; number < coats; number++) {
      if (number > 0 && steps.length + 1 < most && random() < 0.2)
        steps.push(stepOf({ id: `${id}s${number}`, kind: one('scuff', 'sand', 'dust') }));
      if (steps.length < most)
        steps.push(stepOf({ id: `${id}c${number}`, coat: random() < 0.7 ? coat : facts() }));
    }
    if (random() < 0.1) steps.push(stepOf({ id: `${id}z`, kind: 'cure' }));
    return recipeOf(steps, { id, faces: one('flip', 'points') });
  };

  const climate = (): ShopClimate => {
    const humidity = (): number => whole(35, 75);
    const day = { airC: whole(16, 26), relativeHumidityPercent: humidity() };
    const night = { airC: whole(4, 15), relativeHumidityPercent: humidity() };
    return one<ShopClimate>(
      { kind: 'constant', air: { airC: 22, relativeHumidityPercent: 50 } },
      { kind: 'constant', air: day },
      { kind: 'day-night', day, night, dayFromMinute: 7 * HOUR, nightFromMinute: 20 * HOUR },
      { kind: 'sinusoid', warmest: day, coldest: night, warmestAtMinute: 15 * HOUR },
      { kind: 'daily', days: [day, night, day] },
    );
  };

  const groups = small ? whole(1, 3) : whole(2, 3);
  const recipes: CalendarRecipe[] = [];
  const pieces: CalendarPiece[] = [];
  for (let group = 0; group < groups; group++) {
    const id = `r${group}`;
    const made = recipe(id, small ? Math.floor(6 / groups) : 4);
    const bothFaces = (made.faces === 'points' || !small) && random() < 0.5;
    recipes.push(made);
    pieces.push(
      pieceOf({
        id: `p${group}`,
        count: small ? 1 : whole(1, 3),
        showM2: whole(1, 12) / 10,
        backM2: bothFaces ? whole(1, 12) / 10 : 0,
        edgeM2: whole(0, 2) / 10,
        showRecipeId: id,
        backRecipeId: bothFaces ? id : '',
        readyMinute: one(0, 0, whole(0, 30) * HOUR),
      }),
    );
  }
  const windows = small
    ? one(
        [{ fromMin: 8 * HOUR, toMin: 11 * HOUR }],
        [
          { fromMin: 8 * HOUR, toMin: 9 * HOUR },
          { fromMin: 17 * HOUR, toMin: 19 * HOUR },
        ],
      )
    : one(
        [{ fromMin: 8 * HOUR, toMin: 18 * HOUR }],
        [
          { fromMin: 8 * HOUR, toMin: 12 * HOUR },
          { fromMin: 18 * HOUR, toMin: 21 * HOUR },
        ],
      );
  return shopInput({
    stepMin: small ? HOUR : 5,
    horizonDays: small ? 3 : 40,
    startMinute: whole(0, 10) * HOUR,
    firstWeekday: whole(0, 6),
    hours: Array.from({ length: 7 }, (_, day) => (day === 6 && !small ? [] : windows)),
    daysOff: random() < 0.2 ? [whole(0, 3)] : [],
    hands: one(1, 1, 1, 2),
    rackM2: one(null, null, whole(12, 30) / 10),
    climate: climate(),
    sandsApart: random() < 0.2,
    woodWarmerC: one(0, 0, -2),
    recipes,
    pieces,
    seed: whole(1, 1000),
    iterations: small ? 400 : 4,
    clockShifts: random() < 0.2 ? [{ fromMinute: 26 * HOUR, aheadMin: one(60, -60) }] : [],
  });
}
