import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { climateAt } from '../../../server/planning/climate/climate-at.ts';
import { dryingDone } from '../../../server/planning/climate/drying-done.ts';
import { dryingProgress } from '../../../server/planning/climate/drying-progress.ts';
import { type DryingCoat, dryingRate } from '../../../server/planning/climate/drying-rate.ts';
import type { ShopAir, ShopClimate } from '../../../server/planning/climate/shop-climate.ts';
import { seededRandom } from '../../bench/seeded-random.ts';
import { anyClimate, warmerBy } from './any-climate.ts';

const oil = { carrier: 'oil', minTemperatureC: null } as const;
const water = { carrier: 'water', minTemperatureC: null } as const;
const at = (airC: number, relativeHumidityPercent = 50): ShopAir => ({ airC, relativeHumidityPercent });
const constant = (airC: number, percent = 50): ShopClimate => ({ kind: 'constant', air: at(airC, percent) });
const heatedByDay: ShopClimate = {
  kind: 'day-night',
  day: at(22),
  night: at(2),
  dayFromMinute: 480,
  nightFromMinute: 1080,
};

describe('dryingProgress', () => {
  it('gives its worked example', () => {
    // 60 min at rate 1 and 60 min at rate 2 ^ -1: 60 + 30 = 90.
    const hours: ShopClimate = { kind: 'hourly', hours: [at(22), at(12)] };
    expect(dryingProgress(0, 120, hours, oil)).toBe(90);
  });

  it('is nothing over no time and refuses time running backwards', () => {
    expect(dryingProgress(50, 50, heatedByDay, oil)).toBe(0);
    expect(() => dryingProgress(50, 49, heatedByDay, oil)).toThrow(/toMinute/);
  });

  it('adds up over any cut', () => {
    const minute = fc.double({ min: 0, max: 3000, noNaN: true });
    fc.assert(
      fc.property(anyClimate, minute, minute, minute, (climate, start, first, second) => {
        const whole = dryingProgress(start, start + first + second, climate, water);
        const parts =
          dryingProgress(start, start + first, climate, water) +
          dryingProgress(start + first, start + first + second, climate, water);
        expect(parts).toBeCloseTo(whole, 6);
      }),
    );
  });
});

describe('dryingDone', () => {
  it('takes the label time in the reference air', () => {
    expect(dryingDone(100, 480, constant(22), oil)).toEqual({ state: 'dry', minute: 580 });
  });

  it('gives its worked example', () => {
    // 480 + 480 / 0.5 = 1440.
    expect(dryingDone(480, 480, constant(12), oil)).toEqual({ state: 'dry', minute: 1440 });
  });

  it('is done at once for a label time of nothing, even in the cold', () => {
    expect(dryingDone(77, 0, constant(-5), oil)).toEqual({ state: 'dry', minute: 77 });
  });

  it('waits through the cold night', () => {
    // Laid at 900: 180 min until the heating goes off at 1080, then nothing until 1920, then 120 min: 2040.
    expect(dryingDone(900, 300, heatedByDay, oil)).toEqual({ state: 'dry', minute: 2040 });
  });

  it('is done in the evening when the last needed minute is the last warm one', () => {
    // Ten warm hours a day: 600, 1200 and 18 000 label minutes from 480 end at 1080 of day 0, 1 and 29.
    expect(dryingDone(480, 600, heatedByDay, oil)).toEqual({ state: 'dry', minute: 1080 });
    expect(dryingDone(480, 1200, heatedByDay, oil)).toEqual({ state: 'dry', minute: 1440 + 1080 });
    expect(dryingDone(480, 18_000, heatedByDay, oil)).toEqual({ state: 'dry', minute: 29 * 1440 + 1080 });
  });

  it('does not lose the night to rounding', () => {
    const third: ShopClimate = { ...heatedByDay, day: at(22 + 10 / 3) };
    const perDay = dryingProgress(480, 480 + 1440, third, oil);
    for (const days of [1, 2, 3, 7, 30]) {
      const done = dryingDone(480, days * perDay, third, oil);
      expect(done.state).toBe('dry');
      if (done.state === 'dry') expect(done.minute).toBeCloseTo((days - 1) * 1440 + 1080, 6);
    }
  });

  it('says that it is too cold, always or after the rows end', () => {
    const never = { state: 'never', reason: 'below-minimum-temperature' };
    expect(dryingDone(0, 60, constant(4), oil)).toEqual(never);
    expect(dryingDone(0, 60, { ...heatedByDay, day: at(4) }, oil)).toEqual(never);
    expect(
      dryingDone(0, 1, { kind: 'sinusoid', warmest: at(4), coldest: at(-4), warmestAtMinute: 0 }, oil),
    ).toEqual(never);
    expect(dryingDone(0, 200, { kind: 'hourly', hours: [at(22), at(22), at(0)] }, oil)).toEqual(never);
  });

  it('says that it is too damp where it is warm enough', () => {
    const never = { state: 'never', reason: 'air-too-damp' };
    expect(dryingDone(0, 60, constant(22, 100), water)).toEqual(never);
    expect(dryingDone(0, 60, { ...heatedByDay, day: at(22, 100) }, water)).toEqual(never);
    expect(dryingDone(0, 60, constant(22, 100), oil).state).toBe('dry');
  });

  it('gives up after 400 days instead of waiting for ever', () => {
    const beyond = { state: 'never', reason: 'beyond-horizon' };
    const crawling = constant(22, 99.99);
    expect(dryingDone(0, 300_000, crawling, water)).toEqual(beyond);
    expect(dryingDone(0, 400 * 1440, constant(22), oil).state).toBe('dry');
    expect(dryingDone(0, 400 * 1440 + 1, constant(22), oil)).toEqual(beyond);
    const barely: ShopClimate = { ...heatedByDay, nightFromMinute: 481 };
    expect(dryingDone(0, 500, barely, oil)).toEqual(beyond);
  });

  it('agrees with a fine numerical integration within 0.1 percent', () => {
    // Slow twin: adds rate x step at the middle of quarter-minute steps until the label time is reached.
    const random = seededRandom(20_261_125);
    const pick = (low: number, high: number) => low + random() * (high - low);
    const air = () => at(pick(-2, 35), pick(20, 100));
    const climates: (() => ShopClimate)[] = [
      () => ({ kind: 'constant', air: at(pick(6, 35), pick(20, 95)) }),
      () => ({
        ...heatedByDay,
        day: at(pick(15, 30)),
        night: air(),
        dayFromMinute: Math.floor(pick(0, 700)),
      }),
      () => ({
        kind: 'sinusoid',
        warmest: at(pick(20, 35), pick(20, 60)),
        coldest: at(pick(-2, 19), pick(40, 95)),
        warmestAtMinute: Math.floor(pick(0, 1440)),
      }),
      () => ({ kind: 'daily', days: [air(), air(), at(pick(15, 30), 50)] }),
      () => ({ kind: 'hourly', hours: [...Array.from({ length: 40 }, air), at(pick(15, 30), 50)] }),
    ];
    const coats: DryingCoat[] = [oil, water, { carrier: null, minTemperatureC: 12 }];
    let worst = 0;
    for (let round = 0; round < 120; round += 1) {
      const climate = (climates[round % climates.length] ?? (() => constant(20)))();
      const coat = coats[round % coats.length] ?? oil;
      const start = Math.floor(pick(0, 2000));
      const label = pick(30, 1500);
      const done = dryingDone(start, label, climate, coat);
      if (done.state !== 'dry') continue;
      const slow = slowTwin(start, label, climate, coat);
      worst = Math.max(worst, Math.abs(done.minute - slow) / (slow - start));
    }
    expect(worst).toBeLessThan(0.001);
  });

  it('agrees with the smooth daily curve within 0.1 percent where it never gets too cold', () => {
    // The ten-minute cells of the swing against the curve they stand for.
    const swing = { warmest: at(24, 45), coldest: at(12, 75), warmestAtMinute: 900 };
    const climate: ShopClimate = { kind: 'sinusoid', ...swing };
    for (const [start, label] of [
      [0, 300],
      [605, 480],
      [1000, 4000],
    ] as const) {
      let progress = 0;
      let minute = start;
      for (; progress < label; minute += 0.1) {
        const share = (1 + Math.cos((2 * Math.PI * (minute + 0.05 - 900)) / 1440)) / 2;
        progress += 0.1 * dryingRate(at(12 + 12 * share, 75 - 30 * share), water);
      }
      const done = dryingDone(start, label, climate, water);
      if (done.state !== 'dry') throw new Error('expected a dry coat');
      expect(Math.abs(done.minute - minute) / (minute - start)).toBeLessThan(0.001);
    }
  });

  it('never takes longer in a warmer shop of the same humidity', () => {
    fc.assert(
      fc.property(
        anyClimate,
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.constantFrom('oil', 'water', null),
        fc.double({ min: 0, max: 3000, noNaN: true }),
        fc.double({ min: 1, max: 3000, noNaN: true }),
        (climate, degrees, carrier, start, label) => {
          const coat = { carrier, minTemperatureC: 10 } as const;
          const cooler = dryingDone(start, label, climate, coat);
          const warmer = dryingDone(start, label, warmerBy(climate, degrees), coat);
          if (cooler.state !== 'dry') return;
          expect(warmer.state).toBe('dry');
          if (warmer.state === 'dry') expect(warmer.minute).toBeLessThanOrEqual(cooler.minute + 1e-6);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('never takes longer for a shorter label time', () => {
    fc.assert(
      fc.property(anyClimate, fc.double({ min: 1, max: 3000, noNaN: true }), (climate, label) => {
        const long = dryingDone(300, label, climate, water);
        const short = dryingDone(300, label * 0.9, climate, water);
        if (long.state !== 'dry') return;
        expect(short.state).toBe('dry');
        if (short.state === 'dry') expect(short.minute).toBeLessThanOrEqual(long.minute);
      }),
    );
  });

  it('reaches the label time in the minute it names, and not before', () => {
    fc.assert(
      fc.property(anyClimate, fc.double({ min: 1, max: 3000, noNaN: true }), (climate, label) => {
        const done = dryingDone(300, label, climate, water);
        if (done.state !== 'dry') return;
        expect(dryingProgress(300, done.minute, climate, water) / label).toBeCloseTo(1, 6);
        if (done.minute > 301)
          expect(dryingProgress(300, done.minute - 1, climate, water)).toBeLessThan(label);
      }),
    );
  });

  it.each([
    [-1, 60],
    [0, -1],
    [Number.NaN, 60],
    [0, Number.NaN],
    [0, Number.POSITIVE_INFINITY],
  ])('refuses start %d and label %d', (start, label) => {
    expect(() => dryingDone(start, label, constant(20), oil)).toThrow(RangeError);
  });
});

function slowTwin(start: number, label: number, climate: ShopClimate, coat: DryingCoat): number {
  const step = 0.25;
  let progress = 0;
  for (let minute = start; ; minute += step) {
    const rate = dryingRate(climateAt(climate, minute + step / 2), coat);
    if (progress + step * rate >= label) return minute + (label - progress) / rate;
    progress += step * rate;
  }
}
