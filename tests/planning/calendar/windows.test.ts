import { describe, expect, it } from 'vitest';
import { airWindows } from '../../../server/planning/calendar/air-windows.ts';
import { nextStart, startRanges } from '../../../server/planning/calendar/shop/start-ranges.ts';
import { workingWindows } from '../../../server/planning/calendar/working-windows.ts';
import { at, everyDay, shopInput } from './shop-input.ts';

const span = (fromMinute: number, toMinute: number) => ({ fromMinute, toMinute });

describe('workingWindows', () => {
  it('follows the weekdays, leaves out days off and starts at the start', () => {
    const hours = everyDay([8, 12], [13, 17]).map((day, weekday) => (weekday === 6 ? [] : day));
    // Day 0 is a Saturday, day 1 the free Sunday, day 2 off.
    expect(
      workingWindows(
        shopInput({ hours, firstWeekday: 5, startMinute: at(0, 9), horizonDays: 4, daysOff: [2] }),
      ),
    ).toEqual([
      span(at(0, 9), at(0, 12)),
      span(at(0, 13), at(0, 17)),
      span(at(3, 8), at(3, 12)),
      span(at(3, 13), at(3, 17)),
    ]);
  });

  it('joins windows that touch, also over midnight', () => {
    expect(workingWindows(shopInput({ hours: everyDay([0, 6], [6, 7], [20, 24]), horizonDays: 2 }))).toEqual([
      span(0, at(0, 7)),
      span(at(0, 20), at(1, 7)),
      span(at(1, 20), at(2, 0)),
    ]);
  });
});

describe('airWindows', () => {
  const limits = { minTemperatureC: 10, maxTemperatureC: null, maxHumidityPercent: null };
  const air = (airC: number) => ({ airC, relativeHumidityPercent: 50 });

  it('are the warm hours of every day', () => {
    const climate = {
      kind: 'day-night',
      day: air(18),
      night: air(8),
      dayFromMinute: 480,
      nightFromMinute: 1080,
    } as const;
    expect(airWindows(climate, limits, 0, at(2, 0))).toEqual([
      span(at(0, 8), at(0, 18)),
      span(at(1, 8), at(1, 18)),
    ]);
  });

  it('are none where the wood is colder than the limit, and all the time in good air', () => {
    expect(airWindows({ kind: 'constant', air: air(12) }, limits, -3, 1000)).toEqual([]);
    expect(airWindows({ kind: 'constant', air: air(12) }, limits, 0, 1000)).toEqual([span(0, 1000)]);
  });
});

describe('startRanges', () => {
  const times = { sandToMin: 0, layFromMin: 5, layToMin: 25, handsOnMin: 35 };

  it('keep the whole visit in the window and laying in good air', () => {
    expect(startRanges(times, [span(480, 540)], null, 5)).toEqual([{ first: 480, last: 505, window: 0 }]);
    // Good air from 500 to 530: first stroke not before 500, last not after 530: start 495 to 505.
    expect(startRanges(times, [span(480, 600)], [span(500, 530)], 5)).toEqual([
      { first: 495, last: 505, window: 0 },
    ]);
    expect(startRanges(times, [span(480, 514)], null, 5)).toEqual([]);
  });

  it('give the next start on a step, or in the next window, but none in a closed one', () => {
    const ranges = startRanges(times, [span(480, 540), span(600, 660)], null, 5);
    expect(nextStart(ranges, 481, 5, null)?.minute).toBe(485);
    expect(nextStart(ranges, 506, 5, null)?.minute).toBe(600);
    expect(nextStart(ranges, 0, 5, new Set([0]))?.minute).toBe(600);
    expect(nextStart(ranges, 626, 5, null)).toBeNull();
  });
});
