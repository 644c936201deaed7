import {
  DEW_MARGIN_C,
  TYPICAL_MAX_APPLY_C,
  TYPICAL_MAX_APPLY_HUMIDITY_PERCENT,
  TYPICAL_MIN_APPLY_C,
} from './constants.ts';
import { dewMargin } from './dew-margin.ts';
import type { ShopAir } from './shop-climate.ts';

/** A product's limits for laying a coat; null where the label's figure is not known. */
export interface ApplyLimits {
  readonly minTemperatureC: number | null;
  readonly maxTemperatureC: number | null;
  readonly maxHumidityPercent: number | null;
}

export interface ApplyRefusal {
  readonly reason: 'air-too-cold' | 'air-too-warm' | 'air-too-damp' | 'surface-too-cold' | 'surface-near-dew';
  /** The value found and the limit it breaks, in the same unit: C, or percent for `air-too-damp`. */
  readonly value: number;
  readonly limit: number;
  /** Whether the limit is the product's own, or the typical one because the product's is not known. */
  readonly limitFrom: 'product' | 'typical';
}

/**
 * May a coat be laid in this air, on wood of this temperature?
 *
 * @param air shop air, C and percent; humidity above 0
 * @param surfaceC temperature of the wood, C; the caller says "as warm as the air" by passing the air temperature
 * @param limits the product's own limits, null where not known
 * @returns every reason against it, in a fixed order; an empty list means none was found
 *
 * Source: product label figures; where they are not known, 10 to 35 C and 85 % from a coatings training note; the
 * surface at least 3 C above the dew point, customary and credited to ISO 8502-4. Valid range: that of dewMargin; else
 * a RangeError. Departures: the wood must reach the minimum temperature as well as the air, a rule of ours.
 * Example: 16 C, 71 %, wood at 13 C, no limits known: margin 2.25 C, so `surface-near-dew` with limit 3.
 */
export function mayApply(air: ShopAir, surfaceC: number, limits: ApplyLimits): ApplyRefusal[] {
  const margin = dewMargin(surfaceC, air.airC, air.relativeHumidityPercent);
  const minimum = limitOr(limits.minTemperatureC, TYPICAL_MIN_APPLY_C);
  const maximum = limitOr(limits.maxTemperatureC, TYPICAL_MAX_APPLY_C);
  const humidity = limitOr(limits.maxHumidityPercent, TYPICAL_MAX_APPLY_HUMIDITY_PERCENT);

  const refusals: ApplyRefusal[] = [];
  if (air.airC < minimum.limit) refusals.push({ reason: 'air-too-cold', value: air.airC, ...minimum });
  if (air.airC > maximum.limit) refusals.push({ reason: 'air-too-warm', value: air.airC, ...maximum });
  if (air.relativeHumidityPercent > humidity.limit)
    refusals.push({ reason: 'air-too-damp', value: air.relativeHumidityPercent, ...humidity });
  if (surfaceC < minimum.limit) refusals.push({ reason: 'surface-too-cold', value: surfaceC, ...minimum });
  if (!margin.enough)
    refusals.push({
      reason: 'surface-near-dew',
      value: margin.marginC,
      limit: DEW_MARGIN_C,
      limitFrom: 'typical',
    });
  return refusals;
}

function limitOr(own: number | null, typical: number): Pick<ApplyRefusal, 'limit' | 'limitFrom'> {
  return own === null ? { limit: typical, limitFrom: 'typical' } : { limit: own, limitFrom: 'product' };
}
