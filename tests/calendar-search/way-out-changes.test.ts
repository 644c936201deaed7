import { describe, expect, it } from 'vitest';
import { wayOutChanges } from '../../server/calendar-search/way-out-changes.ts';
import type { CalendarWayOut } from '../../server/planning/calendar/calendar-plan.ts';
import type { ProjectInput } from '../../server/planning/project-input.ts';

function way(
  change: CalendarWayOut['change'],
  value: number | null = null,
  taskId: string | null = null,
): CalendarWayOut {
  return { change, value, taskId, message: '', readyToAssembleMinute: 0 };
}

/** Only what a way out can change. */
const input = {
  settings: { dayC: 18, nightC: 58, dayHumidity: 60, nightHumidity: 15 },
  shopHours: [
    { id: '1', weekday: 0, from: '8', to: '12:00' },
    { id: '2', weekday: 0, from: '1 pm', to: '22:30' },
    { id: '3', weekday: 5, from: '09:00', to: 'late' },
    { id: '4', weekday: 6, from: '09:00', to: '17:00' },
  ],
  daysOff: [{ id: '7', date: '2027-03-15', note: '' }],
  climateRows: [
    { id: '8', date: '2027-03-15', time: '', temperatureC: 5, humidityPercent: null },
    { id: '9', date: '2027-03-16', time: '', temperatureC: null, humidityPercent: 80 },
  ],
  pins: [
    { id: '5', taskId: 'a', start: '' },
    { id: '6', taskId: 'b', start: '' },
  ],
  doneTasks: [],
} as unknown as ProjectInput;

describe('the edits that make a way out real', () => {
  it('removes the pin that is named, or every pin', () => {
    expect(wayOutChanges(way('drop-pin', null, 'b'), input)).toEqual([
      { op: 'delete', table: 'pins', id: '6' },
    ]);
    expect(wayOutChanges(way('drop-pin'), input).length).toBe(2);
  });

  it('ends each day later, up to midnight, and begins it earlier by what is left', () => {
    // 22:30 and 2 h: an hour and a half reach midnight, half an hour is put before 08:00. A row that cannot be read stays.
    expect(wayOutChanges(way('longer-windows', 120), input)).toEqual([
      { op: 'update', table: 'shopHours', id: '2', values: { to: '24:00' } },
      { op: 'update', table: 'shopHours', id: '1', values: { from: '07:30' } },
      { op: 'update', table: 'shopHours', id: '4', values: { to: '19:00' } },
    ]);
  });

  it('warms and dries the settings and the rows, within what they take', () => {
    expect(wayOutChanges(way('warmer-shop', 5), input)).toEqual([
      { op: 'settings', values: { dayC: 23, nightC: 60 } },
      { op: 'update', table: 'climateRows', id: '8', values: { temperatureC: 10 } },
    ]);
    expect(wayOutChanges(way('drier-shop', 20), input)).toEqual([
      { op: 'settings', values: { dayHumidity: 40, nightHumidity: 1 } },
      { op: 'update', table: 'climateRows', id: '9', values: { humidityPercent: 60 } },
    ]);
  });

  it('sets people, room and place, and has nothing to set for a longer look ahead', () => {
    expect(wayOutChanges(way('more-hands', 2), input)).toEqual([{ op: 'settings', values: { hands: 2 } }]);
    expect(wayOutChanges(way('larger-rack', 6.5), input)).toEqual([
      { op: 'settings', values: { rackM2: 6.5 } },
    ]);
    expect(wayOutChanges(way('smaller-batches', 0.4), input)).toEqual([
      { op: 'settings', values: { largestBatchM2: 0.4 } },
    ]);
    expect(wayOutChanges(way('sand-apart'), input)).toEqual([
      { op: 'settings', values: { sandsApart: true } },
    ]);
    expect(wayOutChanges(way('open-days-off'), input)).toEqual([{ op: 'delete', table: 'daysOff', id: '7' }]);
    expect(wayOutChanges(way('longer-horizon', 120), input)).toEqual([]);
    expect(wayOutChanges(way('forget-done'), input)).toEqual([]);
  });
});
