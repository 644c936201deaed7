/**
 * A small repeatable random source for benches and slow twins: Marsaglia's 32-bit xorshift ("Xorshift RNGs",
 * Journal of Statistical Software 8(14), 2003, shifts 13, 17, 5). Returns numbers in [0, 1).
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 2 ** 32;
  };
}
