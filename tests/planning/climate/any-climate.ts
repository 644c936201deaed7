import fc from 'fast-check';
import type { ShopAir, ShopClimate } from '../../../server/planning/climate/shop-climate.ts';

/** Any shop climate a user could enter, for property tests. */

export const anyAir: fc.Arbitrary<ShopAir> = fc.record({
  airC: fc.double({ min: -10, max: 40, noNaN: true }),
  relativeHumidityPercent: fc.double({ min: 1, max: 100, noNaN: true }),
});

const clock = fc.integer({ min: 0, max: 1439 });

export const anyClimate: fc.Arbitrary<ShopClimate> = fc.oneof(
  fc.record({ kind: fc.constant('constant' as const), air: anyAir }),
  fc.record({
    kind: fc.constant('day-night' as const),
    day: anyAir,
    night: anyAir,
    dayFromMinute: clock,
    nightFromMinute: clock,
  }),
  fc.record({
    kind: fc.constant('sinusoid' as const),
    warmest: anyAir,
    coldest: anyAir,
    warmestAtMinute: clock,
  }),
  fc.record({
    kind: fc.constant('daily' as const),
    days: fc.array(anyAir, { minLength: 1, maxLength: 5 }),
  }),
  fc.record({
    kind: fc.constant('hourly' as const),
    hours: fc.array(anyAir, { minLength: 1, maxLength: 80 }),
  }),
);

/** The same climate, so many degrees warmer, humidity unchanged. */
export function warmerBy(climate: ShopClimate, degrees: number): ShopClimate {
  const warm = (air: ShopAir): ShopAir => ({ ...air, airC: air.airC + degrees });
  switch (climate.kind) {
    case 'constant':
      return { ...climate, air: warm(climate.air) };
    case 'day-night':
      return { ...climate, day: warm(climate.day), night: warm(climate.night) };
    case 'sinusoid':
      return { ...climate, warmest: warm(climate.warmest), coldest: warm(climate.coldest) };
    case 'daily':
      return { ...climate, days: climate.days.map(warm) };
    case 'hourly':
      return { ...climate, hours: climate.hours.map(warm) };
  }
}
