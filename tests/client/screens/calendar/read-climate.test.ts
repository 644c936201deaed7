import { describe, expect, it } from 'vitest';
import { datesBetween } from '../../../../client/screens/calendar/setup/dates-between.ts';
import { readClimate } from '../../../../client/screens/calendar/setup/read-climate.ts';

describe('a pasted climate', () => {
  it('is read hour by hour as a logger saves it, with a heading', () => {
    const text = 'Time,Temp,RH\r\n2026-12-12 14:00,18.5,55\r\n2026-12-12T15:00:30,18,56 %\r\n';
    expect(readClimate(text, 'metric')).toEqual({
      rows: [
        { date: '2026-12-12', time: '14:00', temperatureC: 18.5, humidityPercent: 55 },
        { date: '2026-12-12', time: '15:00', temperatureC: 18, humidityPercent: 56 },
      ],
      refusals: [],
    });
  });

  it('takes tabs and semicolons, quotes, a time of its own column, whole days, and no humidity', () => {
    const text = '2026-12-12\t9:05\t18,5\t50\n"2026-12-13";"20"\n';
    expect(readClimate(text, 'metric').rows).toEqual([
      { date: '2026-12-12', time: '09:05', temperatureC: 18.5, humidityPercent: 50 },
      { date: '2026-12-13', time: '', temperatureC: 20, humidityPercent: null },
    ]);
  });

  it('reads Fahrenheit in an inch project: 68 F is 20 C', () => {
    expect(readClimate('2026-12-12,68', 'us').rows[0]?.temperatureC).toBeCloseTo(20, 9);
  });

  it('says which lines it cannot read, and reads the others', () => {
    const text =
      '2026-12-12,18\n2026-02-30,18\n12/13/2026,18\n2026-12-13 25:00,18\n2026-12-14,\n2026-12-15,18,140\n';
    const { rows, refusals } = readClimate(text, 'metric');
    expect(rows).toHaveLength(1);
    expect(refusals.map(({ line }) => line)).toEqual([2, 3, 4, 5, 6]);
    expect(refusals[0]?.message).toBe('There is no day 2026-02-30.');
    expect(refusals[3]?.message).toBe('The temperature is missing.');
  });
});

describe('the dates between two', () => {
  it('include both, over the end of a month and a leap day', () => {
    expect(datesBetween('2028-02-28', '2028-03-01')).toEqual(['2028-02-28', '2028-02-29', '2028-03-01']);
    expect(datesBetween('2028-02-28', '2028-02-28')).toEqual(['2028-02-28']);
  });

  it('are refused the wrong way round, unreadable, or for more than a year', () => {
    expect(datesBetween('2028-03-01', '2028-02-28')).toBeNull();
    expect(datesBetween('2028-03-01', '')).toBeNull();
    expect(datesBetween('2028-01-01', '2029-01-01')).toBeNull();
  });
});
