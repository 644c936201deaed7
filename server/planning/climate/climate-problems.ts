import type { Problem } from '../problem.ts';
import { MINUTES_PER_DAY, SHOP_MAX_C, SHOP_MIN_C, SHOP_MIN_HUMIDITY_PERCENT } from './constants.ts';
import type { ShopAir, ShopClimate } from './shop-climate.ts';

/**
 * Which values of a typed-in shop climate cannot be right?
 *
 * @param climate the climate as the user entered it: temperatures C, humidities percent, clock times minutes
 * @returns one problem per bad value, in the order of the fields; empty when all can be used
 *
 * Source: definition of relative humidity (at most 100 %); the other limits are a rule of ours. Valid range: any
 * climate. Departures: none. The other climate functions may be called once this returns no problem.
 * Example: 21 C and 120 % gives one problem at the field `climate.air.relativeHumidityPercent`.
 */
export function climateProblems(climate: ShopClimate): Problem[] {
  switch (climate.kind) {
    case 'constant':
      return airProblems('air', climate.air);
    case 'day-night':
      return [
        ...airProblems('day', climate.day),
        ...airProblems('night', climate.night),
        ...clockProblems('dayFromMinute', climate.dayFromMinute),
        ...clockProblems('nightFromMinute', climate.nightFromMinute),
      ];
    case 'sinusoid':
      return [
        ...airProblems('warmest', climate.warmest),
        ...airProblems('coldest', climate.coldest),
        ...clockProblems('warmestAtMinute', climate.warmestAtMinute),
        ...endsProblems(climate.coldest, climate.warmest),
      ];
    case 'daily':
      return rowProblems('days', climate.days);
    case 'hourly':
      return rowProblems('hours', climate.hours);
  }
}

function airProblems(field: string, air: ShopAir): Problem[] {
  const problems: Problem[] = [];
  if (!(air.airC >= SHOP_MIN_C && air.airC <= SHOP_MAX_C))
    problems.push(
      invalid(
        `${field}.airC`,
        `A shop temperature of ${air.airC} C is outside ${SHOP_MIN_C} to ${SHOP_MAX_C} C.`,
        'Enter the shop temperature in degrees Celsius.',
      ),
    );
  if (!(air.relativeHumidityPercent >= SHOP_MIN_HUMIDITY_PERCENT && air.relativeHumidityPercent <= 100))
    problems.push(
      invalid(
        `${field}.relativeHumidityPercent`,
        `A relative humidity of ${air.relativeHumidityPercent} % is outside ${SHOP_MIN_HUMIDITY_PERCENT} to 100 %.`,
        'Enter the relative humidity your hygrometer shows, 1 to 100.',
      ),
    );
  return problems;
}

function clockProblems(field: string, minute: number): Problem[] {
  if (minute >= 0 && minute < MINUTES_PER_DAY) return [];
  const message = `A clock time of ${minute} minutes after midnight is outside the day.`;
  return [invalid(field, message, 'Enter a time from 00:00 to 23:59.')];
}

function endsProblems(coldest: ShopAir, warmest: ShopAir): Problem[] {
  if (!(coldest.airC > warmest.airC)) return [];
  const message = `The coldest temperature, ${coldest.airC} C, is above the warmest, ${warmest.airC} C.`;
  return [invalid('coldest.airC', message, 'Swap the two temperatures.')];
}

function rowProblems(field: string, rows: readonly ShopAir[]): Problem[] {
  if (rows.length === 0)
    return [invalid(field, 'The climate table has no rows.', 'Add a row, or choose a constant climate.')];
  return rows.flatMap((air, index) => airProblems(`${field}.${index}`, air));
}

function invalid(field: string, message: string, wayOut: string): Problem {
  const at = { table: 'settings', id: null, field: `climate.${field}` } as const;
  return { code: 'setting-invalid', severity: 'error', at, message, wayOut };
}
