import { dryingDone } from '../../climate/drying-done.ts';
import type { DryingCoat } from '../../climate/drying-rate.ts';
import type { DryingRule } from '../../climate/drying-rule.ts';
import type { ShopClimate } from '../../climate/shop-climate.ts';

/** Minute (since midnight of day 0) at which a coat laid at a minute has dried; Infinity when it never does. */
export type DryingClock = (laidMinute: number) => number;

/**
 * When is a coat dry, asked many thousand times?
 *
 * @param climate, rule the shop's air and how drying follows it
 * @returns a function that gives the clock of a coat and a label time in minutes; equal ones share their answers
 *
 * Source: dryingDone, with every answer remembered. Later laid is never dry sooner. Valid range: that of dryingDone.
 * Departures: `never` is Infinity here. Example: constant reference air, label 60, laid at 480: 540.
 */
export function dryingClocks(
  climate: ShopClimate,
  rule: DryingRule,
): (coat: DryingCoat, labelMinutes: number) => DryingClock {
  const clocks = new Map<string, DryingClock>();
  return (coat, labelMinutes) => {
    const key = `${coat.carrier} ${coat.minTemperatureC} ${labelMinutes}`;
    const found = clocks.get(key);
    if (found !== undefined) return found;
    const known = new Map<number, number>();
    const clock: DryingClock = (laidMinute) => {
      let done = known.get(laidMinute);
      if (done === undefined) {
        const result = dryingDone(laidMinute, labelMinutes, climate, coat, rule);
        done = result.state === 'dry' ? result.minute : Number.POSITIVE_INFINITY;
        known.set(laidMinute, done);
      }
      return done;
    };
    clocks.set(key, clock);
    return clock;
  };
}
