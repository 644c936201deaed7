import { describe, expect, it } from 'vitest';
import {
  clockShiftsOf,
  dateInZone,
  minuteAt,
  momentAt,
  startOfDate,
} from '../../server/calendar-search/zone-days.ts';
import { realMinute } from '../../server/planning/calendar/real-minute.ts';
import { clockMinute } from '../../server/planning/display/clock-minute.ts';

const HOUR = 60;
const DAY = 1440;

// Rules of the IANA time zone database: New York puts clocks forward at 02:00 on the second Sunday in March (2027: the
// 14th) and back at 02:00 on the first Sunday in November (the 7th); Berlin back at 03:00 on the last Sunday in October
// (2026: the 25th), forward on the last in March (2027: the 28th).
describe('the days of a time zone', () => {
  it('puts clocks forward in New York on 14 March 2027', () => {
    const [spring, autumn] = clockShiftsOf('2027-03-13', 'America/New_York');
    expect(spring).toEqual({ fromMinute: DAY + 2 * HOUR, aheadMin: 60 });
    // 7 November is day 239; 02:00 summer time there is 239 days and 1 real hour after midnight of day 0.
    expect(autumn).toEqual({ fromMinute: 239 * DAY + HOUR, aheadMin: 0 });
    // Saturday 18:00 to Sunday 09:00 is 15 h on the clock and 14 h of drying.
    const shifts = clockShiftsOf('2027-03-13', 'America/New_York');
    expect(realMinute(DAY + 9 * HOUR, shifts) - realMinute(18 * HOUR, shifts)).toBe(14 * HOUR);
    expect(momentAt(DAY + 8 * HOUR, '2027-03-13', 'America/New_York').toISOString()).toBe(
      // 09:00 at UTC-4.
      '2027-03-14T13:00:00.000Z',
    );
  });

  it('puts clocks back in Berlin on 25 October 2026', () => {
    const shifts = clockShiftsOf('2026-10-24', 'Europe/Berlin');
    expect(shifts[0]).toEqual({ fromMinute: DAY + 3 * HOUR, aheadMin: -60 });
    // Saturday 18:00 to Sunday 09:00: 15 h on the clock, 16 h of drying.
    expect(realMinute(DAY + 9 * HOUR, shifts) - realMinute(18 * HOUR, shifts)).toBe(16 * HOUR);
    expect(clockMinute(DAY + 10 * HOUR, shifts)).toBe(DAY + 9 * HOUR);
    expect(momentAt(DAY + 10 * HOUR, '2026-10-24', 'Europe/Berlin').toISOString()).toBe(
      // 09:00 at UTC+1.
      '2026-10-25T08:00:00.000Z',
    );
  });

  it('knows a change by half an hour, to the minute', () => {
    // Lord Howe Island goes from UTC+10:30 to UTC+11 at 02:00 on the first Sunday in October: 4 October 2026.
    expect(clockShiftsOf('2026-10-03', 'Australia/Lord_Howe')[0]).toEqual({
      fromMinute: DAY + 2 * HOUR,
      aheadMin: 30,
    });
  });

  it('begins a day whose midnight is skipped at the change', () => {
    // Beirut puts clocks forward at 00:00 on the last Sunday in March: 28 March 2027 begins at 01:00, UTC+3.
    const start = startOfDate('2027-03-28', 'Asia/Beirut');
    expect(start.toISOString()).toBe('2027-03-27T22:00:00.000Z');
    const shifts = clockShiftsOf('2027-03-28', 'Asia/Beirut');
    expect(shifts[0]).toEqual({ fromMinute: 0, aheadMin: 60 });
    expect(realMinute(9 * HOUR, shifts)).toBe(8 * HOUR);
  });

  it('has no changes where there are none', () => {
    expect(clockShiftsOf('2027-01-01', 'UTC')).toEqual([]);
    expect(clockShiftsOf('2027-01-01', 'Asia/Tokyo')).toEqual([]);
  });

  it('tells the date of a moment, and the minute, in the zone', () => {
    const moment = new Date('2027-03-14T03:30:00Z');
    expect(dateInZone(moment, 'America/New_York')).toBe('2027-03-13');
    expect(dateInZone(moment, 'Asia/Tokyo')).toBe('2027-03-14');
    // 22:30 of the evening before the change.
    expect(minuteAt(moment, '2027-03-13', 'America/New_York')).toBe(22 * HOUR + 30);
  });
});
