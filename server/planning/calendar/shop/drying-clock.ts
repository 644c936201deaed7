import { climateAt } from '../../climate/climate-at.ts';
import { climateHoldsUntil } from '../../climate/climate-holds-until.ts';
import { DRYING_HORIZON_MIN, MINUTES_PER_DAY } from '../../climate/constants.ts';
import { type DryingCoat, dryingRate } from '../../climate/drying-rate.ts';
import type { DryingRule } from '../../climate/drying-rule.ts';
import type { ShopClimate } from '../../climate/shop-climate.ts';

/** Minute (since midnight of day 0) at which a coat laid at a minute has dried; Infinity when it never does. */
export type DryingClock = (laidMinute: number) => number;

/** Share of the label time forgiven as rounding, as in dryingDone. */
const ROUNDING_SHARE = 1e-9;

/** Label minutes gained since minute 0, at every moment at which the air changes. */
interface GainTable {
  readonly breaks: readonly number[];
  readonly gained: readonly number[];
  /** Rate from each break on. */
  readonly rates: readonly number[];
  /** The table covers one day that repeats; else the last rate holds for good. */
  readonly repeats: boolean;
}

/**
 * When is a coat dry, asked many thousand times?
 *
 * @param climate, rule the shop's air and how drying follows it
 * @returns a function that gives the clock of a coat and a label time in minutes
 *
 * Source: the rule of dryingDone, progress = integral of dryingRate; the integral is tabled once per coat, so that one
 * answer is two look-ups. Tests hold that both agree. Later laid is never dry sooner. Valid range: that of dryingDone.
 * Departures: `never` is Infinity here. Example: constant reference air, label 60, laid at 480: 540.
 */
export function dryingClocks(
  climate: ShopClimate,
  rule: DryingRule,
): (coat: DryingCoat, labelMinutes: number) => DryingClock {
  const tables = new Map<string, GainTable>();
  return (coat, labelMinutes) => {
    const key = `${coat.carrier} ${coat.minTemperatureC}`;
    const table = tables.get(key) ?? gainTable(climate, rule, coat);
    tables.set(key, table);
    return (laidMinute) => {
      const done = doneIn(table, laidMinute, labelMinutes);
      return done - laidMinute > DRYING_HORIZON_MIN ? Number.POSITIVE_INFINITY : done;
    };
  };
}

function gainTable(climate: ShopClimate, rule: DryingRule, coat: DryingCoat): GainTable {
  const repeats = climate.kind === 'day-night' || climate.kind === 'sinusoid';
  const breaks: number[] = [];
  const gained: number[] = [];
  const rates: number[] = [];
  const end = repeats ? MINUTES_PER_DAY : Number.POSITIVE_INFINITY;
  let sum = 0;
  for (let at = 0; at < end; ) {
    const rate = dryingRate(climateAt(climate, at), coat, rule);
    breaks.push(at);
    gained.push(sum);
    rates.push(rate);
    const until = Math.min(climateHoldsUntil(climate, at), end);
    if (until < Number.POSITIVE_INFINITY) sum += rate * (until - at);
    at = until;
  }
  if (repeats) {
    breaks.push(MINUTES_PER_DAY);
    gained.push(sum);
  }
  return { breaks, gained, rates, repeats };
}

function doneIn(
  { breaks, gained, rates, repeats }: GainTable,
  laidMinute: number,
  labelMinutes: number,
): number {
  if (labelMinutes === 0) return laidMinute;
  const slack = labelMinutes * ROUNDING_SHARE;
  const perDay = repeats ? (gained.at(-1) as number) : Number.POSITIVE_INFINITY;
  if (perDay === 0) return Number.POSITIVE_INFINITY;
  const midnight = repeats ? Math.floor(laidMinute / MINUTES_PER_DAY) * MINUTES_PER_DAY : 0;
  const cell = lastNotAbove(breaks, laidMinute - midnight, rates.length);
  const goal =
    (gained[cell] as number) +
    (rates[cell] as number) * (laidMinute - midnight - (breaks[cell] as number)) +
    labelMinutes;
  const days = repeats ? Math.max(0, Math.ceil((goal - slack) / perDay) - 1) : 0;
  const rest = goal - (repeats ? days * perDay : 0);

  // First stretch at whose end the rest is gained.
  let low = 0;
  let high = rates.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((gained[middle + 1] as number) >= rest - slack) high = middle;
    else low = middle + 1;
  }
  const rate = rates[low] as number;
  if (rate === 0) return Number.POSITIVE_INFINITY;
  const minute = (breaks[low] as number) + (rest - (gained[low] as number)) / rate;
  return midnight + days * MINUTES_PER_DAY + Math.min(minute, breaks[low + 1] ?? Number.POSITIVE_INFINITY);
}

function lastNotAbove(breaks: readonly number[], minute: number, count: number): number {
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((breaks[middle] as number) <= minute) low = middle;
    else high = middle - 1;
  }
  return low;
}
