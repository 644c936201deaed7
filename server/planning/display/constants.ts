/** Millimetres in one inch. Exact: international yard and pound agreement, 1959. */
export const MM_PER_INCH = 25.4;

/** Millimetres in one foot. Exact: twelve inches. */
export const MM_PER_FOOT = 304.8;

/** Metres in one foot. Exact. */
export const M_PER_FOOT = 0.3048;

/** Square metres in one square foot. Exact: 0.3048 squared. */
export const M2_PER_FT2 = 0.09290304;

/** Litres in one US liquid gallon. Exact: 231 cubic inches. */
export const L_PER_US_GALLON = 3.785411784;

/** US liquid quarts in a US gallon, and US fluid ounces in a quart. Exact. */
export const QUARTS_PER_GALLON = 4;
export const FLUID_OUNCES_PER_QUART = 32;

/**
 * A printed fraction further than this from the true length is marked as approximate, mm. A rule of ours: a tenth
 * of the finest step a metric part list is printed in, and finer than any saw fence reads.
 */
export const APPROXIMATE_FROM_MM = 0.01;

/** Put before a length that the printed fraction only approximates; the reader of lengths accepts it. */
export const APPROXIMATE_MARK = '≈';

/** Printed in place of a number that is not known. */
export const UNKNOWN_TEXT = 'unknown';
