/** Grid of the cutting search: whole tenths of a micrometre, so that sums are exact. Ours, no source. */
export const GRID_PER_MM = 10_000;

/**
 * Stock counts as this much longer and wider than it is, mm: fractions of an inch rounded to the grid must still fill a
 * sheet exactly. A thousandth of a millimetre is far below what any saw holds. Ours, no source.
 */
export const FIT_TOLERANCE_MM = 0.001;

/** A board counts as wide enough, and a part as needing no rip, within this, mm. Ours, no source. */
export const BOARD_WIDTH_TOLERANCE_MM = 0.5;

/** A remainder narrower than this is not drawn as an offcut, mm. Ours, no source. */
export const LEAST_OFFCUT_MM = 0.05;

/** Saw kerfs above this are taken for a slip of the pen, mm: circular saw blades are 1.6 to 4.5 mm. Common practice, no source. */
export const MOST_KERF_MM = 20;

/** Work put into one edit's plan: about 15 ms together on a 2020s desktop processor. Ours, measured. */
export const BOUND_EFFORT = 100_000;
export const SEARCH_WORK = 30_000;
export const MOST_SEARCH_STEPS = 600;
/** Many small pieces on few sheets make long steps: the search of an edit ends after looking at about so many places. Ours, measured. */
export const MOST_SEARCH_PLACES = 3_000_000;

/** Above this many pieces of one material an edit's plan is made in one pass, without search. Ours. */
export const MOST_PIECES_SEARCHED = 400;
