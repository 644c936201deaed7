/**
 * A repeatable random source: the same start gives the same numbers, so the same job gets the same plan.
 *
 * Result: a function of no arguments giving numbers from 0 up to, not including, 1.
 * Source: G. Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8(14), 2003, shifts 13, 17, 5.
 * Valid range: `start` a whole number; 0 is taken as 1, which the generator needs.
 */
export function repeatableRandom(start: number): () => number {
  let state = start >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 0x1_0000_0000;
  };
}
