import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { climateAt } from '../../../server/planning/climate/climate-at.ts';
import { climateHoldsUntil } from '../../../server/planning/climate/climate-holds-until.ts';
import type { ShopClimate } from '../../../server/planning/climate/shop-climate.ts';
import { anyClimate } from './any-climate.ts';

const day = { airC: 18, relativeHumidityPercent: 50 };
const night = { airC: 8, relativeHumidityPercent: 80 };
const dayNight: ShopClimate = { kind: 'day-night', day, night, dayFromMinute: 480, nightFromMinute: 1080 };
const swing: ShopClimate = { kind: 'sinusoid', warmest: day, coldest: night, warmestAtMinute: 900 };

describe('climateAt', () => {
  it('keeps a constant climate', () => {
    expect(climateAt({ kind: 'constant', air: day }, 123_456.7)).toEqual(day);
  });

  it('switches from night to day and back at the clock times, every day', () => {
    expect([479, 480, 1079, 1080, 1440 + 479, 1440 + 480].map((at) => climateAt(dayNight, at).airC)).toEqual([
      8, 18, 18, 8, 8, 18,
    ]);
  });

  it('lets the day run past midnight', () => {
    const shift: ShopClimate = { ...dayNight, dayFromMinute: 1200, nightFromMinute: 360 };
    expect([0, 359, 360, 1199, 1200].map((at) => climateAt(shift, at).airC)).toEqual([18, 18, 8, 8, 18]);
  });

  it('swings between its two ends, warmest at its hour and coldest twelve hours away', () => {
    // Cell 895..905 does not exist: 900 starts the cell 900..910 with its middle at 905, 5 minutes off the peak:
    // 8 + 10 x (1 + cos(2 pi 5 / 1440)) / 2 = 17.9988 C.
    expect(climateAt(swing, 900).airC).toBeCloseTo(17.9988, 4);
    expect(climateAt(swing, 900 - 720).airC).toBeCloseTo(8.0012, 4);
    expect(climateAt(swing, 900 - 360).airC).toBeCloseTo(13 + 5 * Math.sin((2 * Math.PI * 5) / 1440), 9);
    expect(climateAt(swing, 900).relativeHumidityPercent).toBeLessThan(50.01);
  });

  it('stays within 0.17 C of the smooth curve for a swing of 15 C', () => {
    const warmest = { airC: 25, relativeHumidityPercent: 40 };
    const wide: ShopClimate = { ...swing, warmest, coldest: { ...night, airC: 10 } };
    for (let minute = 0; minute < 1440; minute += 0.5) {
      const smooth = 10 + (15 * (1 + Math.cos((2 * Math.PI * (minute - 900)) / 1440))) / 2;
      expect(Math.abs(climateAt(wide, minute).airC - smooth)).toBeLessThan(0.17);
    }
  });

  it('takes a row per day or per hour and holds the last one', () => {
    const daily: ShopClimate = { kind: 'daily', days: [day, night] };
    expect([0, 1439, 1440, 9999].map((at) => climateAt(daily, at).airC)).toEqual([18, 18, 8, 8]);
    const hourly: ShopClimate = { kind: 'hourly', hours: [day, night] };
    expect([0, 59.9, 60, 9999].map((at) => climateAt(hourly, at).airC)).toEqual([18, 18, 8, 8]);
  });

  it('refuses a minute before the calendar begins, and rows that are not there', () => {
    expect(() => climateAt(dayNight, -1)).toThrow(/minute must be a number not below 0 min/);
    expect(() => climateAt(dayNight, Number.NaN)).toThrow(RangeError);
    expect(() => climateAt({ kind: 'daily', days: [] }, 0)).toThrow(/at least one row/);
  });
});

describe('climateHoldsUntil', () => {
  it('names the next break of each kind of climate', () => {
    expect(climateHoldsUntil({ kind: 'constant', air: day }, 5)).toBe(Number.POSITIVE_INFINITY);
    expect([0, 480, 1079.5, 1080].map((at) => climateHoldsUntil(dayNight, at))).toEqual([
      480, 1080, 1080, 1920,
    ]);
    expect(climateHoldsUntil(swing, 903)).toBe(910);
    expect(climateHoldsUntil({ kind: 'hourly', hours: [day, night, day] }, 75)).toBe(120);
    expect(climateHoldsUntil({ kind: 'hourly', hours: [day, night] }, 75)).toBe(Number.POSITIVE_INFINITY);
    expect(climateHoldsUntil({ kind: 'daily', days: [day, night] }, 0)).toBe(1440);
  });

  it('never skips a change of the air', () => {
    fc.assert(
      fc.property(anyClimate, fc.double({ min: 0, max: 6000, noNaN: true }), (climate, minute) => {
        const until = climateHoldsUntil(climate, minute);
        expect(until).toBeGreaterThan(minute);
        const last = Math.min(until - 1e-6, minute + 3000);
        for (const share of [0.25, 0.5, 0.75, 1])
          expect(climateAt(climate, minute + share * (last - minute))).toEqual(climateAt(climate, minute));
      }),
    );
  });
});
