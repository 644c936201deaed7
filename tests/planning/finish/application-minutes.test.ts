import { describe, expect, it } from 'vitest';
import { applicationMinutes } from '../../../server/planning/finish/application-minutes.ts';

describe('minutes to lay a coat', () => {
  it('follow the rate of the method', () => {
    expect(applicationMinutes({ areaM2: 3, method: 'brush' })).toBeCloseTo(20, 12); // 3 / 0.15
    expect(applicationMinutes({ areaM2: 3, method: 'spray-hvlp' })).toBe(6); // 3 / 0.5
    expect(applicationMinutes({ areaM2: 0, method: 'wipe' })).toBe(0);
  });

  it('refuse an area that is no number', () => {
    expect(() => applicationMinutes({ areaM2: Number.NaN, method: 'wipe' })).toThrow('areaM2');
  });
});
