/** Steps of the sheet search between two looks at the clock: a few milliseconds. Ours, measured. */
export const STEPS_AT_ONCE = 25;

/** A round begins anew from the best plan with other random numbers; rounds grow up to the longest. Ours, by trial. */
export const FIRST_ROUND_STEPS = 2000;
export const LONGEST_ROUND_STEPS = 32_000;

/** How many times the present largest offcut is aimed for, boldest first. Ours. */
export const OFFCUT_AIMS = [1.6, 1.2, 1.05] as const;
/** Steps spent on one aim. Ours, measured. */
export const OFFCUT_STEPS = 800;
/** After so many sweeps in a row without gain the offcut is left as it is. Ours. */
export const OFFCUT_SWEEPS = 2;

/** Work put into the bound of a long search: enough for all pairs of weights of a hundred different pieces. Ours. */
export const LONG_BOUND_EFFORT = 5_000_000;
/** The same for boards cut to length, in steps of the pattern search. */
export const BAR_OFFCUT_STEPS = 60;

/** Jobs of more sets of pieces than this are not tried out in full. Ours. */
export const MOST_EXACT_SETS = 40_000;
/** Nor those with more offcuts on hand than this. Ours. */
export const MOST_EXACT_SPARES = 4;
/** Pairs looked at in all before it is given up, a few seconds' work, and between two looks at the clock. Ours, measured. */
export const EXACT_WORK = 150_000_000;
export const EXACT_WORK_AT_ONCE = 500_000;
