import type { CalendarInput } from '../../server/planning/calendar/calendar-input.ts';
import {
  coatOf,
  DAY,
  everyDay,
  HOUR,
  pieceOf,
  recipeOf,
  shopInput,
  stepOf,
} from '../planning/calendar/shop-input.ts';
import { seededRandom } from './seeded-random.ts';

/**
 * Finishing jobs of a given size for the bench. `furniture`: batches with seven steps each (sand, dust, seal, scuff, dust, two topcoats)
 * in a shop that is cold at night, with a rack. `coats`: panels with preparation and three coats, dry after 4 h, recoat
 * within 24 h or after 72 h with sanding, one pair of hands from 08:00 to 18:00.
 */
export function finishingJob(
  kind: 'furniture' | 'coats',
  batches: number,
  seed: number,
  iterations: number,
): CalendarInput {
  const random = seededRandom(seed);
  const areaM2 = (): number => Math.round((1 + 3 * random()) * 100) / 100;
  const recoat = [
    { fromMin: 4 * HOUR, toMin: DAY, scuff: false },
    { fromMin: 3 * DAY, toMin: null, scuff: true },
  ];
  const coat = coatOf({ touchDryMin: HOUR, handleDryMin: 6 * HOUR, recoat });
  const sealer = coatOf({
    carrier: 'water',
    touchDryMin: HOUR / 2,
    handleDryMin: 4 * HOUR,
    recoat: [{ fromMin: 2 * HOUR, toMin: null, scuff: false }],
  });
  const steps =
    kind === 'coats'
      ? [stepOf({ kind: 'dust' }), stepOf({ coats: 3, coat })]
      : [
          stepOf({ kind: 'sand' }),
          stepOf({ kind: 'dust' }),
          stepOf({ kind: 'seal', method: 'wipe', coat: sealer }),
          stepOf({ kind: 'scuff' }),
          stepOf({ id: 'dust-2', kind: 'dust' }),
          stepOf({ coats: 2, coat }),
        ];
  const pieces = Array.from({ length: batches }, (_, index) =>
    pieceOf({ id: `p${index}`, batchName: `${index}`, showM2: areaM2(), backM2: 0 }),
  );
  const furniture: Partial<CalendarInput> = {
    rackM2: 12,
    climate: {
      kind: 'sinusoid',
      warmest: { airC: 23, relativeHumidityPercent: 45 },
      coldest: { airC: 13, relativeHumidityPercent: 65 },
      warmestAtMinute: 15 * HOUR,
    },
  };
  return shopInput({
    hours: everyDay([8, 18]),
    horizonDays: 120,
    recipes: [recipeOf(steps)],
    pieces,
    seed,
    iterations,
    ...(kind === 'furniture' ? furniture : {}),
  });
}
