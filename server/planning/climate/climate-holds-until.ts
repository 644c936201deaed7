import { MINUTES_PER_DAY, MINUTES_PER_HOUR, SINUSOID_CELL_MIN } from './constants.ts';
import { requireWithin } from './require-within.ts';
import type { ShopClimate } from './shop-climate.ts';

/**
 * Until when does the shop's air stay exactly as it is at a minute?
 *
 * @param climate the shop's climate
 * @param minute minutes since midnight at the start of day 0, not below 0
 * @returns the first minute after `minute` at which climateAt may answer differently; Infinity when it never will
 *
 * Source: definition: it goes with climateAt and shares its rule. Valid range: as climateAt. Departures: none.
 * Example: hourly rows, minute 75: 120, unless that was the last row.
 */
export function climateHoldsUntil(climate: ShopClimate, minute: number): number {
  requireWithin('minute', minute, 0, Infinity, 'min');
  switch (climate.kind) {
    case 'constant':
      return Number.POSITIVE_INFINITY;
    case 'day-night': {
      if (climate.dayFromMinute === climate.nightFromMinute) return Number.POSITIVE_INFINITY;
      return Math.min(nextClock(minute, climate.dayFromMinute), nextClock(minute, climate.nightFromMinute));
    }
    case 'sinusoid':
      return nextMultiple(minute, SINUSOID_CELL_MIN);
    case 'daily':
      return endOfRow(minute, MINUTES_PER_DAY, climate.days.length);
    case 'hourly':
      return endOfRow(minute, MINUTES_PER_HOUR, climate.hours.length);
  }
}

function nextMultiple(minute: number, step: number): number {
  return (Math.floor(minute / step) + 1) * step;
}

function nextClock(minute: number, clock: number): number {
  const midnight = Math.floor(minute / MINUTES_PER_DAY) * MINUTES_PER_DAY;
  return midnight + clock > minute ? midnight + clock : midnight + MINUTES_PER_DAY + clock;
}

function endOfRow(minute: number, rowMinutes: number, rows: number): number {
  return minute >= (rows - 1) * rowMinutes ? Number.POSITIVE_INFINITY : nextMultiple(minute, rowMinutes);
}
