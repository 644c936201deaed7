/** A band this thick or thicker comes off the cut size unless its product says otherwise, mm. Common practice, no source. */
export const DEDUCTED_FROM_MM = 1;

/**
 * A band may be this much narrower than thickness plus trim before it is called too narrow, mm. A rule of ours: a
 * sixteenth of an inch written as 1.6 mm is 0.0125 mm too much, twice; tape is not made closer than this.
 */
export const BAND_WIDTH_TOLERANCE_MM = 0.05;

/** Radii may overrun their side by this before they are called too large, mm: binary noise of sums, nothing more. */
export const CORNER_TOLERANCE_MM = 1e-6;

/** Length and width of a round part may differ by this, mm: conversions of inches, nothing more. */
export const ROUND_TOLERANCE_MM = 0.01;

/** Length of a quarter circle of radius 1, exact. */
export const QUARTER_ARC = Math.PI / 2;

/** Area a rounded corner of radius 1 lacks against a square one, exact. */
export const CORNER_AREA_LOST = 1 - Math.PI / 4;

export const MM_PER_M = 1000;
export const MM2_PER_M2 = 1_000_000;
