import { ICE_CURVE, SATURATION_MIN_C, TRIPLE_POINT_C, WATER_CURVE, ZERO_C_IN_KELVIN } from './constants.ts';
import { requireWithin } from './require-within.ts';
import { logSaturation, logSaturationSlope } from './saturation-curve.ts';
import { saturationVapourPressurePa } from './saturation-vapour-pressure-pa.ts';
import { vapourPressurePa } from './vapour-pressure-pa.ts';

/** The search stops when a step is this small, K. Ours: far below what any shop instrument reads. */
const STEP_TOLERANCE_K = 1e-10;
/** Newton doubles its digits each round and needs fewer than ten; more rounds than this would be a defect. */
const MOST_ROUNDS = 60;

/**
 * At what temperature does dew (below 0.01 C: frost) form out of this air?
 *
 * @param airC air temperature, C
 * @param relativeHumidityPercent relative humidity, percent, above 0
 * @returns dew point, C; exactly the air temperature at 100 %
 *
 * Source: definition: the temperature at which saturationVapourPressurePa equals the vapour pressure. Valid range: air
 * from -100 to 200 C, humidity above 0 to 100 %, dew point not below -100 C; outside it a RangeError (bone-dry air has
 * no dew point). Departures: the ASHRAE curve is inverted by Newton's method on its logarithm. The Magnus form
 * (17.625, 243.04) would do within 0.02 C, but would not meet the pressure curve at saturation.
 * Example: 25 C and 50 % is 13.86 C.
 */
export function dewPointC(airC: number, relativeHumidityPercent: number): number {
  const pressurePa = vapourPressurePa(airC, relativeHumidityPercent);
  requireWithin('vapour pressure', pressurePa, saturationVapourPressurePa(SATURATION_MIN_C), Infinity, 'Pa');
  if (relativeHumidityPercent === 100) return airC;
  const target = Math.log(pressurePa);
  const triple = TRIPLE_POINT_C + ZERO_C_IN_KELVIN;
  // The two curves miss each other by 6e-9 at the triple point; a pressure in the gap has its dew point there.
  if (target > logSaturation(ICE_CURVE, triple) && target <= logSaturation(WATER_CURVE, triple))
    return TRIPLE_POINT_C;
  const curve = target <= logSaturation(ICE_CURVE, triple) ? ICE_CURVE : WATER_CURVE;

  // The logarithm rises and is concave, so a tangent lies above it and meets the target to the left of the dew point:
  // after the first step the search climbs towards the dew point from below and cannot overshoot.
  let kelvin = airC + ZERO_C_IN_KELVIN;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const step = (target - logSaturation(curve, kelvin)) / logSaturationSlope(curve, kelvin);
    kelvin += step;
    if (Math.abs(step) < STEP_TOLERANCE_K) return Math.min(kelvin - ZERO_C_IN_KELVIN, airC);
  }
  throw new RangeError(`dewPointC: no dew point found for ${airC} C and ${relativeHumidityPercent} %`);
}
