import type { ApplicationMethod } from '../project-input.ts';

/** Minutes to stir, lay out the parts and load brush, tray, cloth or gun. Common practice, no source. */
export const SET_UP_MIN: Readonly<Record<ApplicationMethod, number>> = {
  brush: 5,
  roller: 8,
  wipe: 5,
  'spray-hvlp': 15,
  'spray-airless': 20,
  'spray-air': 15,
};

/** Minutes to clean the tools after one coat. Common practice, no source. */
export const CLEAN_UP_MIN: Readonly<Record<ApplicationMethod, number>> = {
  brush: 10,
  roller: 12,
  wipe: 5,
  'spray-hvlp': 15,
  'spray-airless': 25,
  'spray-air': 15,
};

/** Area one person works in a minute, m2/min. Common practice, no source. */
export const DRY_WORK_M2_PER_MIN = { sand: 0.1, scuff: 0.25, dust: 0.5 } as const;

/** Minutes to lay out the parts before dry work and to clear up after it. Common practice, no source. */
export const DRY_WORK_FIXED_MIN = { sand: 10, scuff: 5, dust: 5 } as const;

/** Most days the calendar looks ahead: that of the drying horizon. */
export const MOST_HORIZON_DAYS = 400;

export const DAYS_PER_WEEK = 7;

/** Jobs of up to so many tasks are searched to the end, if the budget allows. */
export const EXACT_TASKS = 40;

/** Tree nodes the exact search may look at per schedule of the budget. About the same work for small jobs. */
export const NODES_PER_ITERATION = 4;

/** Up to so many tasks the exact search may use its whole budget. */
export const FULL_NODES_TASKS = 16;

/** Floating-point dust in minutes: drying that ends this little after a start counts as over. */
export const MINUTE_DUST = 1e-6;

/** Rounding in areas, m2: a batch may exceed its limit by so much. */
export const AREA_DUST_M2 = 1e-9;

/** Up to so many tasks the search may use its whole budget. */
export const FULL_BUDGET_TASKS = 250;

/** Most tasks in one calendar: more are refused rather than planned for minutes. */
export const MOST_TASKS = 1500;

/** Schedules built to find out whether a changed input fits at all. */
export const PROBE_ITERATIONS = 50;
