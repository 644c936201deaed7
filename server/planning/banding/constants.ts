export const MM_PER_M = 1000;

/** Lengths closer than this are one length, mm: sums of many fractions of an inch must not lose a strip that fits. */
export const SAME_LENGTH_MM = 1e-6;

/**
 * When two roll sizes are mixed, every number of rolls of the first is tried up to this many; beyond it only the
 * fewest that hold the longest strips and the last few rolls. A limit of ours that keeps large jobs quick.
 */
export const MOST_ROLLS_TRIED = 16;

/** How many rolls at each end of a long list are tried. */
export const LAST_ROLLS_TRIED = 4;

/** Most rolls of one product that are planned one by one. Our limit: at 25 m a roll, 250 km of banding. */
export const MOST_ROLLS_PLANNED = 10_000;
