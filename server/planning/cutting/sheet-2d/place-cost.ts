/** Weight of the tighter remaining room against the mismatch; ours, found by trial on public instances. */
const ROOM_WEIGHT = 0.3;

/**
 * How badly a piece lies somewhere: the square root of the area lost where edges do not line up, per area of the piece,
 * plus a little for room left over, so that tight places are filled first.
 *
 * `mismatch`: area lost beside the piece. `a`, `b`: its sides; `leftAlong`, `leftAcross`: room left each way. Grid units.
 * Result: a number without unit, lower is better. Rule of ours, no source.
 */
export function placeCost(
  mismatch: number,
  a: number,
  b: number,
  leftAlong: number,
  leftAcross: number,
): number {
  return Math.sqrt(mismatch / (a * b)) + (ROOM_WEIGHT * Math.min(leftAlong, leftAcross)) / (a + b);
}

/**
 * Cost of laying a piece of a by b beside a node of `along` by `across`, a along the line the two lie on; the node may
 * grow by `growAlong` and `growAcross`. Grid units; rule of ours, no source.
 */
export function besideCost(
  a: number,
  b: number,
  along: number,
  across: number,
  growAlong: number,
  growAcross: number,
): number {
  const mismatch = b < across ? a * (across - b) : (b - across) * along;
  return placeCost(mismatch, a, b, growAlong - a, across + growAcross - b);
}
