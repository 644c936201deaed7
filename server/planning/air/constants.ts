/** Numbers of the air formulas, each named once with its meaning, unit and source. */

/**
 * Molar volume by which exposure limits turn from ppm into mg/m3, L/mol. Source: OSHA Table Z-1 of 29 CFR 1910.1000,
 * footnote a (25 C, 760 torr); NIOSH Pocket Guide uses the same. Conventional: the ideal gas law gives 24.465.
 */
export const LIMIT_MOLAR_VOLUME_L = 24.45;

export const PPM_PER_UNIT = 1_000_000;
/** One percent by volume in parts per million. Exact. */
export const PPM_PER_PERCENT = 10_000;
export const LITRES_PER_M3 = 1000;
export const MG_PER_G = 1000;
export const MINUTES_PER_HOUR = 60;
export const SECONDS_PER_HOUR = 3600;
/** Cubic metres in a cubic foot. Exact: 0.3048 cubed. */
export const M3_PER_FT3 = 0.028316846592;

/**
 * Constant of the US form of the dilution equation: cubic feet of vapour from one pint of a liquid of specific gravity
 * 1 and molar mass 1 at 70 F. Source: University of Toledo industrial ventilation notes; ABIH equation sheet.
 */
export const DILUTION_403 = 403;

/**
 * Shares of the lower explosive limit. Ceiling: "below 25 percent" in WAC 296-835-11010(3) and mechanical code
 * 502.7.3.3. Target: the tenth at which NIOSH sets its IDLH for flammable vapours, taken as our planning target.
 */
export const LEL_CEILING_SHARE = 0.25;
export const LEL_TARGET_SHARE = 0.1;
/** The mixture index that must not be reached. Source: 29 CFR 1910.1000(d)(2)(i), "unity" (from memory). */
export const HEALTH_INDEX_LIMIT = 1;

/** Averaging times of exposure limits, minutes. Source: NIOSH Pocket Guide and OSHA Table Z-1. */
export const LONG_TERM_MIN = 480;
export const SHORT_TERM_MIN = 15;

/** Range of the mixing factor: 1 is perfect mixing, up to 10 is poor. Source: CDC, MMWR 43(RR-13), 1994, Table S3-1. */
export const MIXING_FACTOR_MIN = 1;
export const MIXING_FACTOR_MAX = 10;

/** Specific gas constant of dry air, J/(kg K). Source: ASHRAE Handbook of Fundamentals 2017, chapter 1. */
export const DRY_AIR_J_PER_KG_K = 287.042;
/** Specific heat of dry air, J/(kg K). Source: ASHRAE Handbook of Fundamentals 2017, chapter 1. */
export const DRY_AIR_HEAT_J_PER_KG_K = 1006;
export const SECONDS_PER_MINUTE = 60;

/**
 * Share of a coat's solvent taken to be in the air by the time the label calls it touch dry. An assumption of ours: no
 * published constants for stain or varnish on wood were seen.
 */
export const GONE_AT_TOUCH_DRY = 0.95;
/** Decay of a coat whose evaporation is not known, per minute: all in the air within half a minute. Ours, cautious. */
export const ALL_AT_ONCE_PER_MIN = 10;

/** Relative width at which the searches for airflows stop: a ten-thousandth, far finer than any fan is rated. Ours. */
export const AIRFLOW_TOLERANCE = 1e-4;
/** Relative width within which the highest running average is found. Ours. */
export const AVERAGE_TOLERANCE = 1e-5;
