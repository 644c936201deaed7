import { climateAt } from './climate-at.ts';
import { climateHoldsUntil } from './climate-holds-until.ts';
import { type DryingCoat, dryingRate } from './drying-rate.ts';
import { DEFAULT_DRYING_RULE, type DryingRule } from './drying-rule.ts';
import { requireWithin } from './require-within.ts';
import type { ShopClimate } from './shop-climate.ts';

/**
 * How much of its label time has a coat dried through between two minutes?
 *
 * @param fromMinute when the coat was laid, minutes since midnight at the start of day 0
 * @param toMinute the minute asked about, not before fromMinute
 * @param climate the shop's climate
 * @param coat carrier and minimum temperature of the product
 * @param rule the drying rule
 * @returns label minutes gained: the integral of dryingRate over the time between
 *
 * Source: a rule of ours: progress = integral of rate dt. The air is constant between the breaks that climateHoldsUntil
 * names, so the integral is the sum of rate x time, exact. Valid range: fromMinute from 0, toMinute from fromMinute;
 * else a RangeError. Departures: none beyond those of dryingRate and climateAt.
 * Example: an oil finish, 22 C for 60 min then 12 C for 60 min: 60 + 30 = 90 label minutes.
 */
export function dryingProgress(
  fromMinute: number,
  toMinute: number,
  climate: ShopClimate,
  coat: DryingCoat,
  rule: DryingRule = DEFAULT_DRYING_RULE,
): number {
  requireWithin('fromMinute', fromMinute, 0, Infinity, 'min');
  requireWithin('toMinute', toMinute, fromMinute, Infinity, 'min');
  let progress = 0;
  let at = fromMinute;
  while (at < toMinute) {
    const until = Math.min(climateHoldsUntil(climate, at), toMinute);
    progress += dryingRate(climateAt(climate, at), coat, rule) * (until - at);
    at = until;
  }
  return progress;
}
