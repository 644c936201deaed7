/** Numbers of the climate formulas, each named once with its meaning, unit and source. */

/** 0 degrees Celsius in kelvin. Exact by definition. */
export const ZERO_C_IN_KELVIN = 273.15;

/** Triple point of water, C: at and below it the curve over ice holds. Exact by the definition used in 2017. */
export const TRIPLE_POINT_C = 0.01;

/** Standard atmospheric pressure at sea level, Pa. Exact by definition. */
export const STANDARD_PRESSURE_PA = 101_325;

/** Molar gas constant, J/(mol K). Exact since the 2019 revision of the SI. */
export const GAS_CONSTANT_J_PER_MOL_K = 8.314462618;

/** Molar mass of water, g/mol. Source: ASHRAE Handbook of Fundamentals 2017, chapter 1 (from memory). */
export const WATER_G_PER_MOL = 18.015268;

/**
 * Natural logarithm of the saturation pressure (Pa) over ice and over liquid water: coefficients of T^-1, 1, T, T^2,
 * T^3, T^4 and ln T, T in kelvin. Source: Hyland and Wexler 1983, as equations 5 and 6 of ASHRAE Handbook of
 * Fundamentals 2017, chapter 1; read in three independent public programs that quote those equations, which agree.
 */
export const ICE_CURVE = [
  -5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019,
] as const;
export const WATER_CURVE = [
  -5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0, 6.5459673,
] as const;

/** Temperatures the two saturation curves cover, C. Source: as above, -100 to 0 and 0 to 200. */
export const SATURATION_MIN_C = -100;
export const SATURATION_MAX_C = 200;

/**
 * Least distance of a surface above the dew point for coating, C. Source: coatings training note and marine painting
 * manual, which credit ISO 8502-4 (the standard itself was not read). Customary, not a law of nature.
 */
export const DEW_MARGIN_C = 3;

/**
 * Limits for coating where the product's own are not known: temperatures in C, relative humidity in percent.
 * Source: coatings training note ("about 10 to 35 C", "typically 85 %").
 */
export const TYPICAL_MIN_APPLY_C = 10;
export const TYPICAL_MAX_APPLY_C = 35;
export const TYPICAL_MAX_APPLY_HUMIDITY_PERCENT = 85;

/**
 * Coefficients of the wood moisture equation in its Celsius form, each for 1, T and T^2. Source: Simpson,
 * "Equilibrium moisture content of wood in outdoor locations in the United States and worldwide", Research Note
 * FPL-RN-0268, 1998, which gives the equation behind Table 4-2 of the Wood Handbook, FPL-GTR-190.
 */
export const WOOD_W = [349, 1.29, 0.0135] as const;
export const WOOD_K = [0.805, 0.000736, -0.00000273] as const;
export const WOOD_K1 = [6.27, -0.00938, -0.000303] as const;
export const WOOD_K2 = [1.91, 0.0407, -0.000293] as const;
/** Molar mass of water in percent units, as the equation has it: 18 g/mol times 100. Source: as above. */
export const WOOD_WATER_TERM = 1800;
/** Temperatures the Wood Handbook table was fitted over, C (30 to 270 F; the upper rows from memory). */
export const WOOD_MIN_C = -1.2;
export const WOOD_MAX_C = 132.3;

/** Moisture range over which the dimensional-change coefficients hold, percent. Source: Wood Handbook, Table 13-5. */
export const MOVEMENT_MIN_PERCENT = 6;
export const MOVEMENT_MAX_PERCENT = 14;
/** Wood stops moving above its fibre saturation point, about 30 %. Source: Wood Handbook, chapter 4 (from memory). */
export const FIBRE_SATURATION_PERCENT = 30;

export const MINUTES_PER_HOUR = 60;
export const MINUTES_PER_DAY = 1440;

/** The smooth day curve is read at the middle of cells this long, minutes. A choice of ours: see climateAt. */
export const SINUSOID_CELL_MIN = 10;

/** Shop temperatures the climate model accepts, C. A choice of ours: wider than any shop anyone works in. */
export const SHOP_MIN_C = -40;
export const SHOP_MAX_C = 60;
/** Driest shop air accepted, percent: bone-dry air has no dew point, and no hygrometer reads below. Ours. */
export const SHOP_MIN_HUMIDITY_PERCENT = 1;

/** Drying is not followed further than this, minutes: 400 days. A choice of ours. */
export const DRYING_HORIZON_MIN = 400 * MINUTES_PER_DAY;

/** The doubling rule is written per this many degrees, C. Exact: the rule's wording. */
export const DOUBLING_STEP_C = 10;
