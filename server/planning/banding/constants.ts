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

/** Up to so many different strip lengths, and so many strips, the least cost is searched for: quick for an edit. Ours. */
export const MOST_LENGTHS_SEARCHED = 60;
export const MOST_STRIPS_SEARCHED = 1000;
/** Where the longest roll holds more of the shortest strips than this, its patterns are not searched. Ours, measured. */
export const MOST_STRIPS_TO_A_ROLL = 20;
/** Share of an edit's work that goes into the pattern search, see cutBars. Ours, measured. */
export const PATTERN_EFFORT = 0.3;

/** Most rolls of one product that are planned one by one. Our limit: at 25 m a roll, 250 km of banding. */
export const MOST_ROLLS_PLANNED = 10_000;
