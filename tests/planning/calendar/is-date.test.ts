import { describe, expect, it } from 'vitest';
import { isDate } from '../../../server/planning/calendar/is-date.ts';
import { dateOfDay, dayNumber, weekdayOfDay } from '../../../server/planning/calendar/project/day-number.ts';

describe('dates', () => {
  it.each(['2027-03-14', '2028-02-29', '2000-02-29', '1970-01-01', '0001-01-01', '9999-12-31'])(
    'has %s',
    (date) => {
      expect(isDate(date)).toBe(true);
    },
  );

  it.each([
    '2027-02-29',
    '1900-02-29',
    '2027-04-31',
    '2027-13-01',
    '2027-00-10',
    '2027-01-00',
    '27-01-01',
    '2027-1-1',
    '2027-03-14 ',
    '',
    '0000-01-01',
    'today',
  ])('has no %j', (date) => {
    expect(isDate(date)).toBe(false);
  });

  it('are counted in days, and lead back', () => {
    // 57 years of 365 days, and the 14 leap days from 1972 to 2024, are 20819 days to 1 January 2027; 14 March is 72
    // days later.
    expect(dayNumber('2027-03-14')).toBe(20_819 + 72);
    expect(dateOfDay(20_891)).toBe('2027-03-14');
    expect(dayNumber('1969-12-31')).toBe(-1);
    expect(() => dayNumber('2027-02-29')).toThrow(RangeError);
  });

  it('have their weekday', () => {
    // 14 March 2027 is a Sunday, 1 January 1970 was a Thursday.
    expect(weekdayOfDay(dayNumber('2027-03-14'))).toBe(6);
    expect(weekdayOfDay(0)).toBe(3);
    expect(weekdayOfDay(-4)).toBe(6);
  });
});
