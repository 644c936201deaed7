/**
 * Coefficients of ln(saturation pressure in Pa) for T^-1, 1, T, T^2, T^3, T^4 and ln T, T in kelvin: the form of
 * equations 5 and 6 of ASHRAE Handbook of Fundamentals 2017, chapter 1.
 */
export type SaturationCurve = readonly [number, number, number, number, number, number, number];

/**
 * What is the logarithm of the saturation pressure on one of the two curves?
 *
 * @param curve the curve over ice or over water
 * @param kelvin temperature, K, above 0; the caller has checked it
 * @returns ln of the pressure in Pa
 *
 * Source: ASHRAE Handbook of Fundamentals 2017, chapter 1, equations 5 and 6. Valid range: the caller's. Departures:
 * none. Example: the curve over water at 293.15 K gives 7.7574, which is 2338.80 Pa.
 */
export function logSaturation(curve: SaturationCurve, kelvin: number): number {
  const [inverse, constant, t1, t2, t3, t4, log] = curve;
  const polynomial = constant + kelvin * (t1 + kelvin * (t2 + kelvin * (t3 + kelvin * t4)));
  return inverse / kelvin + polynomial + log * Math.log(kelvin);
}

/**
 * How steep is that logarithm?
 *
 * @param curve the curve over ice or over water
 * @param kelvin temperature, K, above 0; the caller has checked it
 * @returns derivative of ln(pressure), per K
 *
 * Source: the derivative of logSaturation, exact. Valid range: the caller's. Departures: none.
 * Example: the curve over water at 293.15 K gives 0.0619 per K: 6.2 % more vapour per degree.
 */
export function logSaturationSlope(curve: SaturationCurve, kelvin: number): number {
  const [inverse, , t1, t2, t3, t4, log] = curve;
  const polynomial = t1 + kelvin * (2 * t2 + kelvin * (3 * t3 + kelvin * 4 * t4));
  return -inverse / kelvin ** 2 + polynomial + log / kelvin;
}
