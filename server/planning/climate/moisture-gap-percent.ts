import { equilibriumMoisturePercent } from './equilibrium-moisture-percent.ts';
import { requireWithin } from './require-within.ts';

/**
 * How far is the wood from the moisture content it will settle at in this shop?
 *
 * @param woodMoisturePercent measured moisture content of the wood, percent of dry mass
 * @param airC shop temperature, C
 * @param relativeHumidityPercent relative humidity of the shop, percent
 * @returns measured minus equilibrium, in points of moisture content: above 0 the wood will dry and shrink, below 0 it
 *   will take up water and swell
 *
 * Source: definition, with equilibriumMoisturePercent. Valid range: wood 0 to 200 %, air as for
 * equilibriumMoisturePercent; outside it a RangeError. Departures: none.
 * Example: wood at 12 % in a shop at 20 C and 50 % (9.27 %) is 2.73 points too wet.
 */
export function moistureGapPercent(
  woodMoisturePercent: number,
  airC: number,
  relativeHumidityPercent: number,
): number {
  requireWithin('woodMoisturePercent', woodMoisturePercent, 0, 200, '%');
  return woodMoisturePercent - equilibriumMoisturePercent(airC, relativeHumidityPercent);
}
