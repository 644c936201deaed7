import { describe, expect, it } from 'vitest';
import { taxOnLine } from '../../../server/planning/buying/tax-on-line.ts';

describe('tax on a line', () => {
  it('on three sheets at 49.00 is 11.76 at 8 %, together 158.76', () => {
    // ourhomefromscratch.com, March 2013, "Planning and cutting the plywood": three birch sheets at about 49; 8 % assumed
    expect(taxOnLine({ lineMinor: 14_700, taxPercent: 8 })).toBe(1176);
  });

  it('on 90.00 at 6.67 % is 6.00', () => {
    // the144workshop.com, "Build or buy the media bookcase, part three": 90 before and 96 with tax
    expect(taxOnLine({ lineMinor: 9000, taxPercent: 6.67 })).toBe(600);
  });

  it.each([
    [149, 8.5, 13], // 12.665
    [147, 8.5, 12], // 12.495, just under the half
    [100, 8.5, 9], // 8.5, the half goes up
    [300, 8.5, 26], // 25.5 goes up
    [1, 0.5, 0], // 0.005
    [10, 4.9999, 0], // 0.49999
    [10, 5, 1], // 0.5
    [0, 20, 0],
    [12_345, 0, 0],
    [1_000_000_000_000, 19.6, 196_000_000_000],
  ])('on %s at %s %% is %s', (lineMinor, taxPercent, tax) => {
    expect(taxOnLine({ lineMinor, taxPercent })).toBe(tax);
  });

  it('refuses fractions of a minor unit and rates below 0', () => {
    expect(() => taxOnLine({ lineMinor: 1.5, taxPercent: 8 })).toThrow('lineMinor');
    expect(() => taxOnLine({ lineMinor: 1, taxPercent: -1 })).toThrow('taxPercent');
    expect(() => taxOnLine({ lineMinor: 1, taxPercent: Number.NaN })).toThrow('taxPercent');
  });
});
