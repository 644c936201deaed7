import type { Carrier } from '../product.ts';
import { DOUBLING_STEP_C } from './constants.ts';
import { DEFAULT_DRYING_RULE, type DryingRule } from './drying-rule.ts';
import { requireWithin } from './require-within.ts';
import type { ShopAir } from './shop-climate.ts';
import { vapourPressureDeficitPa } from './vapour-pressure-deficit-pa.ts';

/** What of a product bears on its drying. */
export interface DryingCoat {
  /** Null when not known: the slower of waterborne and solvent-borne is then taken. */
  readonly carrier: Carrier | null;
  /** The product's minimum temperature, C; null when not known: the rule's fallback is then taken. */
  readonly minTemperatureC: number | null;
}

/**
 * How fast does a coat dry in this air, against the label's time?
 *
 * @param air shop air, C and percent
 * @param coat carrier and minimum temperature of the product
 * @param rule the drying rule; DEFAULT_DRYING_RULE unless the user changed it
 * @returns label minutes gained per minute: 1 in the reference air, 2 where it dries twice as fast, 0 where it does not
 *
 * Source: a rule of ours. factorPer10C ^ ((T - reference) / 10), from memory and adjustable; waterborne coats times
 * (vapour-pressure deficit / that of the reference air), because water leaves a film as fast as the air takes it up.
 * Valid range: that of the saturation pressure; the rule's factor from 1, reference humidity under 100 %; else a
 * RangeError. Departures: the deficit grows with temperature too, so temperature counts twice for waterborne coats:
 * slower in the cold and faster in the warm than either rule alone. Oxygen, film thickness and moving air are left out.
 * Example: an oil finish at 12 C: 2 ^ -1 = 0.5, so an 8 h label takes 16 h. Waterborne in 22 C and 75 %: 0.5.
 */
export function dryingRate(air: ShopAir, coat: DryingCoat, rule: DryingRule = DEFAULT_DRYING_RULE): number {
  requireWithin('rule.factorPer10C', rule.factorPer10C, 1, 100, '');
  const deficitPa = vapourPressureDeficitPa(air.airC, air.relativeHumidityPercent);
  const referenceDeficitPa = vapourPressureDeficitPa(rule.referenceC, rule.referenceRelativeHumidityPercent);
  requireWithin('vapour-pressure deficit of the reference air', referenceDeficitPa, 1, Infinity, 'Pa');
  if (air.airC < (coat.minTemperatureC ?? rule.fallbackMinC)) return 0;

  const byTemperature = rule.factorPer10C ** ((air.airC - rule.referenceC) / DOUBLING_STEP_C);
  if (rule.waterborne === 'temperature-only') return byTemperature;
  const byWater = byTemperature * (deficitPa / referenceDeficitPa);
  if (coat.carrier === null) return Math.min(byTemperature, byWater);
  return coat.carrier === 'water' ? byWater : byTemperature;
}
