import { describe, expect, it } from 'vitest';
import { mayApply } from '../../../server/planning/climate/may-apply.ts';

const unknown = { minTemperatureC: null, maxTemperatureC: null, maxHumidityPercent: null };
const label = { minTemperatureC: 18, maxTemperatureC: 27, maxHumidityPercent: 70 };
const air = (airC: number, relativeHumidityPercent: number) => ({ airC, relativeHumidityPercent });
const reasons = (...given: Parameters<typeof mayApply>) =>
  mayApply(...given).map((refusal) => refusal.reason);

describe('mayApply', () => {
  it('finds nothing against a warm, dry shop', () => {
    expect(mayApply(air(21, 50), 21, unknown)).toEqual([]);
    expect(mayApply(air(21, 50), 20, label)).toEqual([]);
  });

  it('gives its worked example', () => {
    // 13 - 10.75 = 2.25 C, less than 3 C.
    const [refusal, ...others] = mayApply(air(16, 71), 13, unknown);
    expect(others).toEqual([]);
    expect(refusal).toMatchObject({ reason: 'surface-near-dew', limit: 3, limitFrom: 'typical' });
    expect(refusal?.value).toBeCloseTo(2.25, 2);
  });

  it('goes by the label where there is one and by typical limits where there is none', () => {
    expect(mayApply(air(9, 50), 9, unknown)[0]).toEqual({
      reason: 'air-too-cold',
      value: 9,
      limit: 10,
      limitFrom: 'typical',
    });
    expect(mayApply(air(17, 50), 18, label)[0]).toEqual({
      reason: 'air-too-cold',
      value: 17,
      limit: 18,
      limitFrom: 'product',
    });
  });

  it('allows each limit itself and refuses just beyond', () => {
    expect(reasons(air(18, 50), 18, label)).toEqual([]);
    expect(reasons(air(27, 70), 27, label)).toEqual([]);
    expect(reasons(air(27.01, 70), 27, label)).toEqual(['air-too-warm']);
    expect(reasons(air(27, 70.01), 27, label)).toEqual(['air-too-damp']);
    expect(reasons(air(18, 50), 17.99, label)).toEqual(['surface-too-cold']);
  });

  it('lists every reason at once', () => {
    expect(reasons(air(5, 95), 4, unknown)).toEqual([
      'air-too-cold',
      'air-too-damp',
      'surface-too-cold',
      'surface-near-dew',
    ]);
  });

  it('refuses air and surfaces that are not numbers', () => {
    expect(() => mayApply(air(20, Number.NaN), 20, unknown)).toThrow(RangeError);
    expect(() => mayApply(air(20, 120), 20, unknown)).toThrow(RangeError);
    expect(() => mayApply(air(20, 50), Number.NaN, unknown)).toThrow(RangeError);
  });
});
