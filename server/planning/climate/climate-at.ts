import { MINUTES_PER_DAY, MINUTES_PER_HOUR, SINUSOID_CELL_MIN } from './constants.ts';
import { requireWithin } from './require-within.ts';
import type { ShopAir, ShopClimate } from './shop-climate.ts';

/**
 * What are the shop's temperature and humidity at a minute of the calendar?
 *
 * @param climate the shop's climate; its values checked by climateProblems
 * @param minute minutes since midnight at the start of day 0, not below 0; fractions allowed
 * @returns air temperature, C, and relative humidity, percent
 *
 * Source: a rule of ours; no published model of a home shop was looked for. Valid range: minute 0 and up, at least one
 * row in a table of rows; else a RangeError. Departures: the smooth daily swing is read at the middle of ten-minute
 * cells, so that the air is constant over known stretches and drying adds up exactly; for a swing of 15 C between night
 * and day that moves the temperature by at most 0.17 C. Rows that have run out hold their last value.
 * Example: 18 C by day from 480, 8 C at night from 1080: minute 600 is 18 C, minute 1200 is 8 C.
 */
export function climateAt(climate: ShopClimate, minute: number): ShopAir {
  requireWithin('minute', minute, 0, Infinity, 'min');
  switch (climate.kind) {
    case 'constant':
      return climate.air;
    case 'day-night':
      return isDay(minute % MINUTES_PER_DAY, climate.dayFromMinute, climate.nightFromMinute)
        ? climate.day
        : climate.night;
    case 'sinusoid': {
      const cellMiddle = (Math.floor(minute / SINUSOID_CELL_MIN) + 1 / 2) * SINUSOID_CELL_MIN;
      const turn = (2 * Math.PI * (cellMiddle - climate.warmestAtMinute)) / MINUTES_PER_DAY;
      return between(climate.coldest, climate.warmest, (1 + Math.cos(turn)) / 2);
    }
    case 'daily':
      return row(climate.days, Math.floor(minute / MINUTES_PER_DAY));
    case 'hourly':
      return row(climate.hours, Math.floor(minute / MINUTES_PER_HOUR));
  }
}

/** Day may run past midnight: from 1200 to 360 for a night shift. Equal times mean it is always day. */
function isDay(clock: number, dayFrom: number, nightFrom: number): boolean {
  if (dayFrom === nightFrom) return true;
  return dayFrom < nightFrom ? clock >= dayFrom && clock < nightFrom : clock >= dayFrom || clock < nightFrom;
}

function between(low: ShopAir, high: ShopAir, share: number): ShopAir {
  return {
    airC: low.airC + share * (high.airC - low.airC),
    relativeHumidityPercent:
      low.relativeHumidityPercent + share * (high.relativeHumidityPercent - low.relativeHumidityPercent),
  };
}

function row(rows: readonly ShopAir[], index: number): ShopAir {
  const found = rows[Math.min(index, rows.length - 1)];
  if (found === undefined) throw new RangeError('climate must have at least one row, got none');
  return found;
}
