/** Below this spread of the arguments the series is used; at it both ways agree to 14 digits. Ours. */
const SERIES_SPREAD = 0.1;
/** Terms of the series: the first one left out is under 0.1^12 / 14!, far below rounding. */
const SERIES_TERMS = 12;

/**
 * What is the first divided difference of the exponential: the mean of e^x between two points?
 *
 * @param a one point, not above 0
 * @param b the other point, not above 0
 * @returns (e^b - e^a) / (b - a), and e^a where they are equal; never above 1
 *
 * Source: definition of the divided difference; Hermite-Genocchi formula for its meaning. Valid range: finite numbers
 * up to 0; the room functions check their inputs. Departures: written with expm1 around the larger point, so that two
 * nearly equal points lose no digits.
 * Example: points 0 and -1: 1 - 1/e = 0.63212.
 */
export function expDifference(a: number, b: number): number {
  const high = Math.max(a, b);
  const spread = Math.abs(b - a);
  return Math.exp(high) * (spread === 0 ? 1 : -Math.expm1(-spread) / spread);
}

/**
 * What is the second divided difference of the exponential?
 *
 * @param a first point, not above 0
 * @param b second point, not above 0
 * @param c third point, not above 0
 * @returns the divided difference over the three points; half of e^a where all are equal; never above 1/2
 *
 * Source: definition of the divided difference. Valid range: finite numbers up to 0. Departures: over the widest pair by
 * the recursion; where all three lie close together, where that would cancel, by the series of complete homogeneous
 * polynomials h_n(a, b, c) / (n + 2)! about the largest point.
 * Example: points 0, 0 and -1: 1/e = 0.36788.
 */
export function expSecondDifference(a: number, b: number, c: number): number {
  const low = Math.min(a, b, c);
  const high = Math.max(a, b, c);
  const middle = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  const spread = high - low;
  if (spread >= SERIES_SPREAD) return (expDifference(middle, high) - expDifference(low, middle)) / spread;
  // h_n of (x, y, 0) is the sum of x^i y^(n-i): one line of Horner for it, one for the series.
  const [x, y] = [low - high, middle - high];
  let power = 1;
  let homogeneous = 1;
  let factorial = 2;
  let sum = homogeneous / factorial;
  for (let n = 1; n < SERIES_TERMS; n += 1) {
    power *= x;
    homogeneous = power + y * homogeneous;
    factorial *= n + 2;
    sum += homogeneous / factorial;
  }
  return Math.exp(high) * sum;
}
