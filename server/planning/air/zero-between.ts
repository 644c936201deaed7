/** Share of the first bracket to which the zero is narrowed down. Ours. */
const WIDTH_SHARE = 1e-9;
/** How far a guess is pulled towards the middle, as a share of the squared bracket. Source: the method's authors. */
const PULL = 0.2;
/** Rounds beyond plain halving that the method may spend. Ours: steep exponentials need more than the authors' one. */
const SPARE_ROUNDS = 6;

/**
 * Where does a quantity pass from above nothing to nothing or below?
 *
 * @param at the quantity; above 0 at `low`, not above 0 at `high`, and with one change of sign in between
 * @param low left end
 * @param high right end, above the left one
 * @returns a point at which it is not above 0, at most a thousand-millionth of the bracket right of the change
 *
 * Source: the ITP method: interpolate, truncate, project (Oliveira and Takahashi, ACM Transactions on Mathematical
 * Software 47, 2020, from memory). It guesses by false position, pulls the guess a little towards the middle, and never
 * strays so far from the middle that it would need more than six rounds over halving. Valid range: the caller's bracket.
 * Departures: none.
 * Example: 2 - x between 0 and 5: 2.
 */
export function zeroBetween(at: (point: number) => number, low: number, high: number): number {
  const width = high - low;
  const narrow = WIDTH_SHARE * width;
  let [left, right] = [low, high];
  let [above, below] = [at(left), at(right)];
  // How far from the middle this round may stray, and the next half as far less what halving has to gain.
  let allowed = narrow * 2 ** (Math.ceil(Math.log2(1 / WIDTH_SHARE)) - 1 + SPARE_ROUNDS);
  while (right - left > narrow) {
    const middle = left + (right - left) / 2;
    const guess = left + (right - left) * (above / (above - below));
    const side = Math.sign(middle - guess);
    const pull = (PULL / width) * (right - left) ** 2;
    const pulled = pull <= Math.abs(middle - guess) ? guess + side * pull : middle;
    const stray = Math.max(0, allowed - (right - left) / 2);
    const point = Math.abs(pulled - middle) <= stray ? pulled : middle - side * stray;
    if (!(point > left && point < right)) break;
    const value = at(point);
    if (value > 0) [left, above] = [point, value];
    else [right, below] = [point, value];
    allowed /= 2;
  }
  return right;
}
