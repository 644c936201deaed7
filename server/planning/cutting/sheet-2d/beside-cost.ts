/** Cost of laying a by b beside a node (a along the joint direction). */
export function besideCost(
  a: number,
  b: number,
  along: number,
  across: number,
  growAlong: number,
  growAcross: number,
): number {
  const mismatch = b < across ? a * (across - b) : (b - across) * along;
  return mismatch / (a * b) + (0.3 * Math.min(growAlong - a, across + growAcross - b)) / (a + b);
}
