/**
 * A need this little above what is on hand or in the packs counts as covered, in the product's unit: 0.1 mL of a
 * liquid, 0.1 mm of a length, a ten-thousandth of a piece. It absorbs floating-point dust and figures finer than any
 * measuring cup. Rule of ours.
 */
export const COVER_TOLERANCE = 1e-4;

/**
 * Pack sizes are reckoned with as whole grid steps. The grid has a million steps to the product's unit (a
 * microlitre), finer than any printed size, so that 0.473, 0.946 and 3.785 L are exact on it.
 */
export const STEPS_PER_UNIT = 1_000_000;

/**
 * Partial mixes looked at before the search gives up. Real pack prices need a few hundred, whatever the need; only
 * prices in proportion to size over dozens of packs need more.
 */
export const MOST_STATES = 10_000;

/**
 * After giving up, the search is made again with base packs taken for all but this many base packs' worth of the need.
 */
export const FREE_BASE_PACKS = [Number.POSITIVE_INFINITY, 64, 16, 4, 1] as const;

/** Most one pack may cost, minor units: ten million of a currency with cents. */
export const MOST_PRICE_MINOR = 1_000_000_000;

/** Without prices, one further pack counts as much as this part (one in a hundred) of the smallest pack left over. */
export const PACKS_CHARGE_SHARE = 100;
