import { MM_PER_INCH } from '../../display/constants.ts';

/** By how much a part may be made smaller before it is another part, and in which steps, mm. Rule of ours, no source. */
export const METRIC_STEP_MM = 1;
export const METRIC_STEPS = 10;
export const INCH_STEP_MM = MM_PER_INCH / 16;
export const INCH_STEPS = 6;

/** Kerfs of thin saw blades, widest first, mm. Common practice, no source. */
export const METRIC_THIN_KERFS_MM = [2.4, 1.6] as const;
export const INCH_THIN_KERFS_MM = [(MM_PER_INCH * 3) / 32, MM_PER_INCH / 16] as const;

/** Steps of the sheet search per trial: a look at every trial first, then a longer one at those still open. Ours. */
export const FIRST_LOOK_STEPS = 400;
export const SECOND_LOOK_STEPS = 6000;
/** The same in steps of the pattern search for boards. */
export const FIRST_BAR_STEPS = 40;
export const SECOND_BAR_STEPS = 400;

/** So many statements of one kind are made at most. Ours. */
export const MOST_OF_ONE_KIND = 3;

/** Plans of more pieces than this are not varied row by row. Ours. */
export const MOST_PIECES_VARIED = 1000;
