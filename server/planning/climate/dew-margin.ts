import { DEW_MARGIN_C } from './constants.ts';
import { dewPointC } from './dew-point-c.ts';
import { requireWithin } from './require-within.ts';

export interface DewMargin {
  /** Surface temperature minus dew point, C; negative where the surface is already wet. */
  readonly marginC: number;
  readonly dewPointC: number;
  /** True when the margin is at least 3 C. */
  readonly enough: boolean;
}

/**
 * Is the surface far enough above the dew point for a coat?
 *
 * @param surfaceC temperature of the wood, C
 * @param airC air temperature, C
 * @param relativeHumidityPercent relative humidity of the air, percent, above 0
 * @returns the margin and dew point, C, and whether the margin reaches 3 C
 *
 * Source: the 3 C rule of coatings training notes and a marine painting manual, which credit ISO 8502-4 (not read).
 * Valid range: surface -100 to 200 C; air as for dewPointC; outside it a RangeError. Departures: none.
 * Example: 16 C, 71 %, surface 13 C: dew point 10.75 C, margin 2.25 C, not enough.
 */
export function dewMargin(surfaceC: number, airC: number, relativeHumidityPercent: number): DewMargin {
  requireWithin('surfaceC', surfaceC, -100, 200, 'C');
  const dewC = dewPointC(airC, relativeHumidityPercent);
  const marginC = surfaceC - dewC;
  return { marginC, dewPointC: dewC, enough: marginC >= DEW_MARGIN_C };
}
