import { describe, expect, it } from 'vitest';
import { climateProblems } from '../../../server/planning/climate/climate-problems.ts';

const good = { airC: 20, relativeHumidityPercent: 50 };

describe('climateProblems', () => {
  it('finds nothing wrong with usable climates of every kind', () => {
    expect(climateProblems({ kind: 'constant', air: good })).toEqual([]);
    const clock = { dayFromMinute: 480, nightFromMinute: 1080 };
    expect(climateProblems({ kind: 'day-night', day: good, night: good, ...clock })).toEqual([]);
    const warmestAtMinute = 0;
    expect(climateProblems({ kind: 'sinusoid', warmest: good, coldest: good, warmestAtMinute })).toEqual([]);
    expect(climateProblems({ kind: 'daily', days: [good] })).toEqual([]);
    expect(climateProblems({ kind: 'hourly', hours: [good] })).toEqual([]);
  });

  it('names the field, the value and a way out', () => {
    const air = { airC: 20, relativeHumidityPercent: 120 };
    expect(climateProblems({ kind: 'constant', air })).toEqual([
      {
        code: 'setting-invalid',
        severity: 'error',
        at: { table: 'settings', id: null, field: 'climate.air.relativeHumidityPercent' },
        message: 'A relative humidity of 120 % is outside 1 to 100 %.',
        wayOut: 'Enter the relative humidity your hygrometer shows, 1 to 100.',
      },
    ]);
  });

  it('takes a number that is not one for a bad value', () => {
    const air = { airC: Number.NaN, relativeHumidityPercent: Number.NaN };
    expect(climateProblems({ kind: 'hourly', hours: [good, air] }).map((found) => found.at.field)).toEqual([
      'climate.hours.1.airC',
      'climate.hours.1.relativeHumidityPercent',
    ]);
  });

  it('finds clock times outside the day, swapped ends and missing rows', () => {
    const swapped = { warmest: good, coldest: { ...good, airC: 25 }, warmestAtMinute: 1440 };
    expect(climateProblems({ kind: 'sinusoid', ...swapped }).map((found) => found.at.field)).toEqual([
      'climate.warmestAtMinute',
      'climate.coldest.airC',
    ]);
    expect(climateProblems({ kind: 'daily', days: [] })[0]?.message).toBe('The climate table has no rows.');
  });
});
