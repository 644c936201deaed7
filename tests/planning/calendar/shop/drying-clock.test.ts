import { describe, expect, it } from 'vitest';
import { dryingClocks } from '../../../../server/planning/calendar/shop/drying-clock.ts';
import { dryingDone } from '../../../../server/planning/climate/drying-done.ts';
import { DEFAULT_DRYING_RULE } from '../../../../server/planning/climate/drying-rule.ts';
import type { ShopClimate } from '../../../../server/planning/climate/shop-climate.ts';
import { seededRandom } from '../../../bench/seeded-random.ts';

const warm = { airC: 24, relativeHumidityPercent: 45 };
const cold = { airC: 3, relativeHumidityPercent: 70 };
const CLIMATES: readonly ShopClimate[] = [
  { kind: 'constant', air: warm },
  { kind: 'constant', air: cold },
  { kind: 'day-night', day: warm, night: cold, dayFromMinute: 480, nightFromMinute: 1080 },
  { kind: 'day-night', day: warm, night: cold, dayFromMinute: 1200, nightFromMinute: 360 },
  { kind: 'sinusoid', warmest: warm, coldest: cold, warmestAtMinute: 900 },
  { kind: 'daily', days: [warm, cold, cold, warm] },
  { kind: 'daily', days: [warm, cold] },
  { kind: 'hourly', hours: [cold, cold, warm, warm, cold, warm] },
];

describe('dryingClocks', () => {
  it('adds the label time in reference air', () => {
    const air = { airC: 22, relativeHumidityPercent: 50 };
    const clocks = dryingClocks({ kind: 'constant', air }, DEFAULT_DRYING_RULE);
    expect(clocks({ carrier: 'oil', minTemperatureC: 10 }, 60)(480)).toBe(540);
    expect(clocks({ carrier: 'oil', minTemperatureC: 10 }, 0)(480)).toBe(480);
  });

  it('agrees with dryingDone in every kind of climate', () => {
    const random = seededRandom(3);
    let never = 0;
    for (const climate of CLIMATES) {
      const clocks = dryingClocks(climate, DEFAULT_DRYING_RULE);
      for (let round = 0; round < 400; round++) {
        const carrier = random() < 0.5 ? 'water' : 'oil';
        const coat = { carrier, minTemperatureC: random() < 0.5 ? 10 : null } as const;
        const laid = Math.floor(random() * 8000) + (random() < 0.3 ? random() : 0);
        const label = Math.floor(random() ** 3 * 20_000);
        const done = dryingDone(laid, label, climate, coat);
        const answer = clocks(coat, label)(laid);
        if (done.state === 'never') never++;
        // Both sum the same stretches in another order; 1e-5 minutes is far below the step of the calendar.
        if (done.state === 'dry') expect(Math.abs(answer - done.minute)).toBeLessThan(1e-5);
        else expect(answer).toBe(Number.POSITIVE_INFINITY);
      }
    }
    expect(never).toBeGreaterThan(100);
  });
});
