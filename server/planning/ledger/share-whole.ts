/** Weights are read to a thousand-millionth of the largest, so that sharing is exact in whole numbers. */
const WEIGHT_STEPS = 1_000_000_000;

/**
 * How is a whole amount shared in proportion to weights, so that no unit is lost or made?
 *
 * Each share is its exact part rounded down; the units that are then left over go one each to the largest remainders, of
 * equal ones to the earlier.
 *
 * @param total whole minor units; a negative total is shared as its opposite
 * @param weights 0 or more, in any unit
 * @returns whole minor units, one per weight, whose sum is `total`; null when no weight is above 0
 *
 * Source: largest remainder method (Hamilton's method of apportionment). Departure: none.
 * Example: 100 over 1, 1, 1 is 34, 33, 33.
 */
export function shareWhole(total: number, weights: readonly number[]): readonly number[] | null {
  if (!Number.isInteger(total))
    throw new RangeError(`shareWhole: total must be whole minor units, got ${total}`);
  if (!weights.every((weight) => weight >= 0 && Number.isFinite(weight)))
    throw new RangeError('shareWhole: weights must be finite and at least 0');
  const steps = wholeWeights(weights);
  const sum = steps.reduce((left, right) => left + right, 0n);
  if (sum === 0n) return null;
  const amount = BigInt(Math.abs(total));
  const shares = steps.map((step) => (amount * step) / sum);
  const remainders = steps.map((step, index) => ({ index, rest: (amount * step) % sum }));
  const left = amount - shares.reduce((one, other) => one + other, 0n);
  remainders.sort((one, other) =>
    one.rest === other.rest ? one.index - other.index : one.rest > other.rest ? -1 : 1,
  );
  for (const { index } of remainders.slice(0, Number(left))) shares[index] = (shares[index] ?? 0n) + 1n;
  const sign = total < 0 ? -1n : 1n;
  return shares.map((share) => Number(share * sign));
}

/** Whole weights stand as they are, so that amounts of money are shared by themselves exactly. */
function wholeWeights(weights: readonly number[]): readonly bigint[] {
  if (weights.every(Number.isSafeInteger)) return weights.map(BigInt);
  const largest = weights.reduce((one, other) => Math.max(one, other), 0);
  return weights.map((weight) => BigInt(Math.round((weight / largest) * WEIGHT_STEPS)));
}
