import { describe, expect, it } from 'vitest';
import { readClockTime } from '../../../../server/planning/calendar/project/read-clock-time.ts';

describe('readClockTime', () => {
  it.each([
    ['18:00', 1080],
    ['9', 540],
    ['9.30', 570],
    [' 09:05 ', 545],
    ['6 pm', 1080],
    ['6:30PM', 1110],
    ['12 am', 0],
    ['12:15 p.m.', 735],
    ['0:00', 0],
    ['24:00', 1440],
  ])('reads %j', (text, minute) => {
    expect(readClockTime(text)).toBe(minute);
  });

  it.each(['', 'noon', '25:00', '24:01', '9:60', '13 pm', '0 am', '9:5', '-1:00', '1e1', '9:00:00'])(
    'refuses %j',
    (text) => {
      expect(readClockTime(text)).toBe(null);
    },
  );
});
