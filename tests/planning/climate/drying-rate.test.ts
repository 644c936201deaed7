import { describe, expect, it } from 'vitest';
import { dryingRate } from '../../../server/planning/climate/drying-rate.ts';
import { DEFAULT_DRYING_RULE } from '../../../server/planning/climate/drying-rule.ts';

const air = (airC: number, relativeHumidityPercent = 50) => ({ airC, relativeHumidityPercent });
const oil = { carrier: 'oil', minTemperatureC: null } as const;
const water = { carrier: 'water', minTemperatureC: null } as const;

describe('dryingRate', () => {
  it('is one in the reference air, for every carrier', () => {
    for (const carrier of ['oil', 'water', 'alcohol', 'lacquer-solvent', null] as const)
      expect(dryingRate(air(22), { carrier, minTemperatureC: null })).toBe(1);
  });

  it('doubles every 10 C and halves every 10 C down', () => {
    expect(dryingRate(air(32), oil)).toBe(2);
    expect(dryingRate(air(12), oil)).toBe(0.5);
    expect(dryingRate(air(32, 90), oil)).toBe(2);
  });

  it('lets damp air hold a waterborne coat back in proportion to the vapour-pressure deficit', () => {
    // At one temperature the deficit goes as 100 - humidity: (100 - 75) / (100 - 50) = 0.5.
    expect(dryingRate(air(22, 75), water)).toBeCloseTo(0.5, 12);
    expect(dryingRate(air(22, 100), water)).toBe(0);
  });

  it('counts temperature in both factors for a waterborne coat', () => {
    // Saturation pressures 1228.00 Pa at 10 C and 3169.22 Pa at 25 C (independent program), reference air 20 C:
    // 2 ^ -1 x 1228.00 / 2338.80 = 0.26253.
    const rule = { ...DEFAULT_DRYING_RULE, referenceC: 20 };
    expect(dryingRate(air(10), water, rule)).toBeCloseTo(0.26253, 4);
  });

  it('leaves humidity out when the rule says so', () => {
    const rule = { ...DEFAULT_DRYING_RULE, waterborne: 'temperature-only' } as const;
    expect(dryingRate(air(22, 95), water, rule)).toBe(1);
  });

  it('takes the slower of the two for a carrier that is not known', () => {
    const unknown = { carrier: null, minTemperatureC: null };
    expect(dryingRate(air(22, 75), unknown)).toBeCloseTo(0.5, 12);
    expect(dryingRate(air(22, 10), unknown)).toBe(1);
  });

  it('stops just below the minimum temperature, not at it', () => {
    const coat = { carrier: 'oil', minTemperatureC: 10 } as const;
    expect(dryingRate(air(10), coat)).toBeGreaterThan(0);
    expect(dryingRate(air(9.99), coat)).toBe(0);
    expect(dryingRate(air(5), oil)).toBeGreaterThan(0);
    expect(dryingRate(air(4.99), oil)).toBe(0);
  });

  it('refuses a rule under which warmth slows drying, or with saturated reference air', () => {
    const slower = { ...DEFAULT_DRYING_RULE, factorPer10C: 0.5 };
    expect(() => dryingRate(air(22), oil, slower)).toThrow(/rule.factorPer10C/);
    const soaked = { ...DEFAULT_DRYING_RULE, referenceRelativeHumidityPercent: 100 };
    expect(() => dryingRate(air(22), oil, soaked)).toThrow(/deficit of the reference air/);
  });

  it('refuses air that is not one', () => {
    expect(() => dryingRate(air(Number.NaN), oil)).toThrow(RangeError);
    expect(() => dryingRate(air(20, 101), oil)).toThrow(RangeError);
  });
});
