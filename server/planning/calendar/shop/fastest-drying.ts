import { climateAt } from '../../climate/climate-at.ts';
import { climateHoldsUntil } from '../../climate/climate-holds-until.ts';
import { MINUTES_PER_DAY } from '../../climate/constants.ts';
import { type DryingCoat, dryingRate } from '../../climate/drying-rate.ts';
import type { DryingRule } from '../../climate/drying-rule.ts';
import type { ShopClimate } from '../../climate/shop-climate.ts';

/**
 * How fast does a coat ever dry in this shop?
 *
 * @param climate, rule the shop's air and how drying follows it
 * @param coat carrier and minimum temperature
 * @returns label minutes gained per minute in the best air there is; 0 where it never dries
 *
 * Source: dryingRate in every stretch in which the air stays the same; a daily climate is read for one day, rows to their
 * end, after which the last holds. Valid range: that of dryingRate. Departures: none. Example: constant 22 C: 1.
 */
export function fastestDrying(climate: ShopClimate, rule: DryingRule, coat: DryingCoat): number {
  const repeats = climate.kind === 'day-night' || climate.kind === 'sinusoid';
  const end = repeats ? MINUTES_PER_DAY : Number.POSITIVE_INFINITY;
  let fastest = 0;
  let at = 0;
  while (at < end) {
    fastest = Math.max(fastest, dryingRate(climateAt(climate, at), coat, rule));
    at = climateHoldsUntil(climate, at);
  }
  return fastest;
}
