import { SHOP_MAX_C, SHOP_MIN_HUMIDITY_PERCENT } from '../climate/constants.ts';
import type { ShopAir, ShopClimate } from '../climate/shop-climate.ts';

/**
 * What would the shop's climate be, warmer or drier all the time?
 *
 * @param climate the shop's climate
 * @param warmerC added to every temperature, C
 * @param drierPercent taken off every relative humidity, points
 * @returns the climate, within what climateProblems lets through
 *
 * Source: definition. Valid range: any climate. Departures: none. Example: 8 C and 70 %, 4 warmer: 12 C and 70 %.
 */
export function changedClimate(climate: ShopClimate, warmerC: number, drierPercent: number): ShopClimate {
  const change = (air: ShopAir): ShopAir => ({
    airC: Math.min(SHOP_MAX_C, air.airC + warmerC),
    relativeHumidityPercent: Math.max(SHOP_MIN_HUMIDITY_PERCENT, air.relativeHumidityPercent - drierPercent),
  });
  switch (climate.kind) {
    case 'constant':
      return { ...climate, air: change(climate.air) };
    case 'day-night':
      return { ...climate, day: change(climate.day), night: change(climate.night) };
    case 'sinusoid':
      return { ...climate, warmest: change(climate.warmest), coldest: change(climate.coldest) };
    case 'daily':
      return { ...climate, days: climate.days.map(change) };
    case 'hourly':
      return { ...climate, hours: climate.hours.map(change) };
  }
}
