/** One species' movement across the grain, as a share of width per point of moisture content. */
export interface WoodMovement {
  readonly name: string;
  /** Quarter-sawn face: change in the radial direction, per percent. */
  readonly radialPerPercent: number;
  /** Flat-sawn face: change in the tangential direction, per percent. */
  readonly tangentialPerPercent: number;
}

/**
 * Dimensional-change coefficients of solid wood. Source: Wood Handbook, FPL-GTR-190, 2010, Table 13-5. They hold from
 * 6 to 14 % moisture content, and for solid wood: use them for solid edging and boards, never for a plywood sheet.
 */
export const WOOD_MOVEMENT = {
  'birch-yellow': { name: 'birch, yellow', radialPerPercent: 0.00256, tangentialPerPercent: 0.00338 },
  'birch-paper': { name: 'birch, paper', radialPerPercent: 0.00219, tangentialPerPercent: 0.00304 },
  'maple-sugar': { name: 'maple, sugar', radialPerPercent: 0.00165, tangentialPerPercent: 0.00353 },
  'maple-red': { name: 'maple, red', radialPerPercent: 0.00137, tangentialPerPercent: 0.00289 },
  'ash-white': { name: 'ash, white', radialPerPercent: 0.00169, tangentialPerPercent: 0.00274 },
  'beech-american': { name: 'beech, American', radialPerPercent: 0.0019, tangentialPerPercent: 0.00431 },
  'red-oak': { name: 'red oak, commercial', radialPerPercent: 0.00158, tangentialPerPercent: 0.00369 },
  'white-oak': { name: 'white oak, commercial', radialPerPercent: 0.0018, tangentialPerPercent: 0.00365 },
  'walnut-black': { name: 'walnut, black', radialPerPercent: 0.0019, tangentialPerPercent: 0.00274 },
  'cherry-black': { name: 'cherry, black', radialPerPercent: 0.00126, tangentialPerPercent: 0.00248 },
  'alder-red': { name: 'alder, red', radialPerPercent: 0.00151, tangentialPerPercent: 0.00256 },
  'basswood-american': { name: 'basswood, American', radialPerPercent: 0.0023, tangentialPerPercent: 0.0033 },
} as const satisfies Record<string, WoodMovement>;

export type WoodSpecies = keyof typeof WOOD_MOVEMENT;
