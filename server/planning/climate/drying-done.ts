import { climateAt } from './climate-at.ts';
import { climateHoldsUntil } from './climate-holds-until.ts';
import { DRYING_HORIZON_MIN, MINUTES_PER_DAY } from './constants.ts';
import { dryingProgress } from './drying-progress.ts';
import { type DryingCoat, dryingRate } from './drying-rate.ts';
import { DEFAULT_DRYING_RULE, type DryingRule } from './drying-rule.ts';
import { requireWithin } from './require-within.ts';
import type { ShopClimate } from './shop-climate.ts';

/**
 * Share of the label time forgiven as rounding: a coat that is done as the shop cools off for the night must not wait
 * for the morning because a sum came out one part in a billion short. Ours.
 */
const ROUNDING_SHARE = 1e-9;

export type DryingResult =
  | { readonly state: 'dry'; readonly minute: number }
  | {
      readonly state: 'never';
      /** Too cold all the time, too damp whenever it is warm enough, or so slow that 400 days are not enough. */
      readonly reason: 'below-minimum-temperature' | 'air-too-damp' | 'beyond-horizon';
    };

/**
 * When is a coat as dry as its label promises?
 *
 * @param startMinute when the coat was laid, minutes since midnight at the start of day 0
 * @param labelMinutes the label's time for the stage asked about (touch, recoat, handling, cure), minutes
 * @param climate the shop's climate
 * @param coat carrier and minimum temperature of the product
 * @param rule the drying rule
 * @returns the first minute at which dryingProgress reaches labelMinutes, or why there is none
 *
 * Source: a rule of ours, see dryingProgress. Valid range: startMinute and labelMinutes from 0; else a RangeError.
 * Departures: none. The air is constant from break to break, so the finishing minute is exact; a climate that repeats
 * daily is taken whole days at a time, so a month's cure costs no more than two days' steps. Always ends: a stretch in
 * which nothing dries and that will only repeat is `never`, and everything beyond 400 days is too.
 * Example: an oil finish, label 8 h, laid at minute 480 in a constant 12 C: 480 + 480 / 0.5 = minute 1440.
 */
export function dryingDone(
  startMinute: number,
  labelMinutes: number,
  climate: ShopClimate,
  coat: DryingCoat,
  rule: DryingRule = DEFAULT_DRYING_RULE,
): DryingResult {
  requireWithin('startMinute', startMinute, 0, Infinity, 'min');
  requireWithin('labelMinutes', labelMinutes, 0, Infinity, 'min');
  let at = startMinute;
  let left = labelMinutes;
  const slack = labelMinutes * ROUNDING_SHARE;

  // Whole days of a daily climate: leave more than nothing for the walk, so that it ends in the minute the coat is done.
  if (climate.kind === 'day-night' || climate.kind === 'sinusoid') {
    const perDay = dryingProgress(at, at + MINUTES_PER_DAY, climate, coat, rule);
    if (perDay === 0 && left > 0) return { state: 'never', reason: whyNothing(at, climate, coat, rule) };
    const days = left > perDay ? Math.ceil((left - slack) / perDay) - 1 : 0;
    if (days * MINUTES_PER_DAY > DRYING_HORIZON_MIN) return { state: 'never', reason: 'beyond-horizon' };
    at += days * MINUTES_PER_DAY;
    left -= days * perDay;
  }

  // Walk from break to break; the last stretch of rows has no end, so the horizon ends the walk.
  while (left > 0) {
    const rate = dryingRate(climateAt(climate, at), coat, rule);
    const until = climateHoldsUntil(climate, at);
    if (rate === 0 && until === Number.POSITIVE_INFINITY)
      return { state: 'never', reason: whyNothing(at, climate, coat, rule) };
    const needed = rate === 0 ? Number.POSITIVE_INFINITY : left / rate;
    if (Math.min(at + needed, until) - startMinute > DRYING_HORIZON_MIN)
      return { state: 'never', reason: 'beyond-horizon' };
    if (left <= rate * (until - at) + slack) return { state: 'dry', minute: Math.min(at + needed, until) };
    left -= rate * (until - at);
    at = until;
  }
  return { state: 'dry', minute: at };
}

/** Nothing dries in the day from `at`: is it ever warm enough? */
function whyNothing(
  at: number,
  climate: ShopClimate,
  coat: DryingCoat,
  rule: DryingRule,
): 'below-minimum-temperature' | 'air-too-damp' {
  const minimumC = coat.minTemperatureC ?? rule.fallbackMinC;
  for (let minute = at; minute < at + MINUTES_PER_DAY; minute = climateHoldsUntil(climate, minute))
    if (climateAt(climate, minute).airC >= minimumC) return 'air-too-damp';
  return 'below-minimum-temperature';
}
