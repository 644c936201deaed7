import { climateAt } from '../climate/climate-at.ts';
import { climateHoldsUntil } from '../climate/climate-holds-until.ts';
import { MINUTES_PER_DAY } from '../climate/constants.ts';
import { type ApplyLimits, mayApply } from '../climate/may-apply.ts';
import type { ShopClimate } from '../climate/shop-climate.ts';
import type { MinuteSpan } from './working-windows.ts';

/**
 * When does the shop's air allow a coat to be laid?
 *
 * @param climate the shop's climate
 * @param limits the product's limits
 * @param woodWarmerC how much warmer than the air the wood is, C
 * @param endMinute the end of the calendar, minutes since midnight of day 0
 * @returns spans in order in which mayApply finds nothing against it
 *
 * Source: mayApply, read in every stretch in which the air stays the same. Valid range: that of mayApply. Departures:
 * none. Example: 18 C by day from 480 to 1080, 8 C at night, limit 10 C: 480-1080 of every day.
 */
export function airWindows(
  climate: ShopClimate,
  limits: ApplyLimits,
  woodWarmerC: number,
  endMinute: number,
): MinuteSpan[] {
  const spans: { fromMinute: number; toMinute: number }[] = [];
  const repeats = climate.kind === 'day-night' || climate.kind === 'sinusoid';
  const known = new Map<number, boolean>();
  let at = 0;
  while (at < endMinute) {
    const until = Math.min(climateHoldsUntil(climate, at), endMinute);
    const clock = repeats ? at % MINUTES_PER_DAY : at;
    let allowed = known.get(clock);
    if (allowed === undefined) {
      const air = climateAt(climate, at);
      allowed = mayApply(air, air.airC + woodWarmerC, limits).length === 0;
      known.set(clock, allowed);
    }
    const last = spans.at(-1);
    if (allowed && last !== undefined && last.toMinute === at) last.toMinute = until;
    else if (allowed) spans.push({ fromMinute: at, toMinute: until });
    at = until;
  }
  return spans;
}
