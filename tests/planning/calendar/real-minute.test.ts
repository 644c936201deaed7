import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { realMinute } from '../../../server/planning/calendar/real-minute.ts';
import { clockMinute } from '../../../server/planning/display/clock-minute.ts';

// Day 1 is the day of the change. Forward: 02:00 becomes 03:00 after 1440 + 120 real minutes. Back: 03:00 becomes
// 02:00 after 1440 + 180.
const forward = [{ fromMinute: 1560, aheadMin: 60 }];
const back = [{ fromMinute: 1620, aheadMin: -60 }];

describe('real and clock minutes', () => {
  it('are the same where clocks are not changed', () => {
    expect(realMinute(1980, [])).toBe(1980);
    expect(clockMinute(1980, [])).toBe(1980);
  });

  it('part by an hour once clocks are put forward', () => {
    expect(realMinute(1559, forward)).toBe(1559);
    expect(realMinute(1980, forward)).toBe(1920);
    expect(clockMinute(1559, forward)).toBe(1559);
    expect(clockMinute(1560, forward)).toBe(1620);
    expect(clockMinute(1920, forward)).toBe(1980);
  });

  it('take a time that the clock skips for the moment of the change', () => {
    expect(realMinute(1560, forward)).toBe(1560);
    expect(realMinute(1590, forward)).toBe(1560);
    expect(realMinute(1620, forward)).toBe(1560);
    expect(realMinute(1621, forward)).toBe(1561);
  });

  it('take the first of a time that the clock shows twice', () => {
    // 02:30 is 1590 on the clock of day 1: first after 1590 real minutes, again after 1650.
    expect(realMinute(1590, back)).toBe(1590);
    expect(clockMinute(1590, back)).toBe(1590);
    expect(clockMinute(1650, back)).toBe(1590);
    expect(realMinute(1980, back)).toBe(2040);
  });

  it('lead back to the same clock time wherever the clock shows it', () => {
    const shifts = fc.constantFrom(forward, back, [...forward, { fromMinute: 9000, aheadMin: 0 }]);
    fc.assert(
      fc.property(fc.nat(12_000), shifts, (minute, given) => {
        const clock = clockMinute(minute, given);
        expect(clockMinute(realMinute(clock, given), given)).toBe(clock);
      }),
    );
  });
});
