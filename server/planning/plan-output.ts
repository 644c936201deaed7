import type { Figure } from './figure.ts';
import type { Problem } from './problem.ts';
import type { ApplicationMethod, CostCategory, EdgeName, EdgeTreatment, StepKind } from './project-input.ts';

/**
 * The whole plan of one project. Lists hold objects with an `id`, so that a figure has a path: the list name, the
 * id, the field: `parts/12/cutLengthMm`, `recipes/3/coats/7-1/litres`, `buy/lines/sanding-sealer/cost`.
 */
export interface Plan {
  readonly parts: readonly PartPlan[];
  readonly sizes: readonly SizePlan[];
  readonly materials: readonly MaterialPlan[];
  readonly banding: readonly BandingPlan[];
  readonly recipes: readonly RecipePlan[];
  readonly needs: readonly NeedPlan[];
  readonly buy: BuyPlan;
  readonly totals: PlanTotals;
  readonly groups: PlanGroups;
  readonly problems: readonly Problem[];
}

/** One part row. Figures are for one piece unless the name says `total`. */
export interface PartPlan {
  readonly id: string;
  readonly quantity: Figure;
  readonly lengthMm: Figure;
  readonly widthMm: Figure;
  readonly thicknessMm: Figure;
  readonly cutLengthMm: Figure;
  readonly cutWidthMm: Figure;
  /** Corner radii in the order front-left, front-right, back-left, back-right; 0 is square. For a round part: half its diameter. */
  readonly cornersMm: readonly [number, number, number, number];
  readonly edges: readonly EdgePlan[];
  readonly strips: readonly StripPlan[];
  /** Seen edge that carries a band, metres, all pieces of the row, without overhang. */
  readonly totalBandedM: Figure;
  readonly showFaceM2: Figure;
  readonly backFaceM2: Figure;
  /** Area of the seen edges (banded or bare). */
  readonly seenEdgeM2: Figure;
  /** Everything that gets a recipe, all pieces of the row. */
  readonly totalFinishM2: Figure;
}

export interface EdgePlan {
  readonly id: EdgeName;
  readonly treatment: EdgeTreatment;
  /** Outline length that belongs to the edge: its straight run plus half of each rounded corner (all of it beside an unbanded edge). */
  readonly outlineMm: Figure;
  /** Length the band must cover on this edge, growth over thick neighbours included; null value when not banded. */
  readonly runMm: Figure;
}

/** One piece of banding on one piece of the part. A rounded corner joins its two edges into one strip. */
export interface StripPlan {
  /** Edges joined by `+` in running order: "front", "left+front+right". */
  readonly id: string;
  readonly bandingId: string;
  readonly edges: readonly EdgeName[];
  readonly closed: boolean;
  readonly runMm: Figure;
  /** Length to cut: run plus overhang. */
  readonly stripMm: Figure;
}

export interface SizePlan {
  readonly id: string;
  readonly name: string;
  readonly valueMm: Figure;
}

/** Sheets or boards of one material. */
export interface MaterialPlan {
  /** Product id. */
  readonly id: string;
  readonly kind: 'sheet' | 'board';
  readonly name: string;
  readonly thicknessMm: Figure;
  /** Net area of the cut parts (sheets) or net length (boards). */
  readonly netM2: Figure;
  readonly netM: Figure;
  /** Full sheets or boards to buy. */
  readonly stocks: Figure;
  /** No plan can need fewer. */
  readonly boundStocks: Figure;
  /** True only when the plan's cost equals its lower bound. */
  readonly proven: boolean;
  readonly costMinor: Figure;
  readonly layouts: readonly StockLayout[];
}

/** One sheet or board with what is cut from it. Equal layouts are counted, not repeated. */
export interface StockLayout {
  readonly id: string;
  readonly packId: string | null;
  readonly onHandId: string | null;
  readonly label: string;
  readonly count: number;
  readonly lengthMm: number;
  /** Board width or sheet width. */
  readonly widthMm: number;
  readonly cut: CutNode;
}

/**
 * A tree of saw cuts. `split` cuts a piece into side-by-side children along one direction with a kerf between
 * neighbours; `part` is a finished blank; `offcut` is what is left. Lengths run along the sheet's length.
 */
export type CutNode =
  | {
      readonly type: 'split';
      readonly along: 'length' | 'width';
      readonly lengthMm: number;
      readonly widthMm: number;
      readonly children: readonly CutNode[];
      /** The children are the parts of this grain match, in their order. */
      readonly match?: string;
    }
  | {
      readonly type: 'part';
      readonly partId: string;
      readonly turned: boolean;
      readonly lengthMm: number;
      readonly widthMm: number;
    }
  | { readonly type: 'offcut'; readonly lengthMm: number; readonly widthMm: number };

export interface BandingPlan {
  /** Product id. */
  readonly id: string;
  readonly name: string;
  readonly strips: Figure;
  /** Edge length banded, without overhang. */
  readonly edgeM: Figure;
  /** Strips with overhang and spares. */
  readonly neededM: Figure;
  readonly boughtM: Figure;
  readonly wastedM: Figure;
  readonly rollsToBuy: Figure;
  readonly rolls: readonly RollPlan[];
}

export interface RollPlan {
  readonly id: string;
  /** Null for a leftover on hand. */
  readonly packId: string | null;
  readonly onHandId: string | null;
  readonly label: string;
  readonly lengthMm: number;
  readonly strips: readonly RollStrip[];
  readonly leftMm: number;
}

/** `count` equal strips of one part and edge. `partId` is null for a spare. */
export interface RollStrip {
  readonly partId: string | null;
  readonly stripId: string | null;
  readonly lengthMm: number;
  readonly count: number;
}

export interface RecipePlan {
  readonly id: string;
  readonly name: string;
  readonly showM2: Figure;
  readonly backM2: Figure;
  readonly edgeM2: Figure;
  readonly areaM2: Figure;
  readonly coats: readonly CoatPlan[];
}

/** One coat (a coat step expanded by its count), or one pass of dry work with an abrasive. */
export interface CoatPlan {
  /** `stepId-n`, n from 1. */
  readonly id: string;
  readonly stepId: string;
  readonly number: number;
  readonly kind: StepKind;
  readonly method: ApplicationMethod | null;
  /** Product or blend name. */
  readonly name: string;
  /** Mixed liquid without thinner, reckoned with the project's coverage choice. */
  readonly litres: Figure;
  readonly litresAtLowCoverage: Figure;
  readonly litresAtTypicalCoverage: Figure;
  readonly litresAtHighCoverage: Figure;
  readonly thinnerLitres: Figure;
  /** Separate mixes because of pot life; null value where there is none or it is unknown. */
  readonly mixes: Figure;
  /** Pieces of abrasive for sand and scuff passes. */
  readonly pieces: Figure;
  /** How the coat's litres fall on products: blend components, base and hardener, thinner. */
  readonly shares: readonly CoatShare[];
}

export interface CoatShare {
  /** Product id. */
  readonly id: string;
  readonly name: string;
  readonly litres: Figure;
}

/** Total need of one product over the project, in the product's unit, before packs. */
export interface NeedPlan {
  /** Product id. */
  readonly id: string;
  readonly name: string;
  readonly category: CostCategory;
  readonly need: Figure;
  /** The same at each end of the coverage range; equal to `need` for products without one. */
  readonly needAtLowCoverage: Figure;
  readonly needAtTypicalCoverage: Figure;
  readonly needAtHighCoverage: Figure;
}

export interface BuyPlan {
  readonly lines: readonly BuyLine[];
  /** Sum of the priced lines, without tax. */
  readonly netMinor: Figure;
  readonly taxMinor: Figure;
  readonly totalMinor: Figure;
  /** Lines whose price is not known; while above 0, totals are "at least". */
  readonly unpricedLines: Figure;
  readonly categories: readonly CategoryCost[];
}

export interface BuyLine {
  /** Product id, or `extra-<id>` for a free line. */
  readonly id: string;
  readonly productId: string | null;
  readonly name: string;
  readonly category: CostCategory;
  readonly supplierId: string | null;
  readonly supplierName: string;
  readonly unit: 'pcs' | 'm' | 'L' | 'g';
  readonly need: Figure;
  readonly onHand: Figure;
  readonly toBuy: Figure;
  readonly packs: readonly BuyPack[];
  readonly boughtAmount: Figure;
  readonly leftover: Figure;
  readonly cost: Figure;
  /** The plan with the fewest packs, where it differs from the cheapest; empty otherwise. */
  readonly fewestPacks: readonly BuyPack[];
  readonly fewestPacksCost: Figure;
  /** Things to know when ordering: one batch, shelf life, range. */
  readonly notes: readonly string[];
}

export interface BuyPack {
  /** Pack id. */
  readonly id: string;
  readonly label: string;
  readonly amount: number;
  readonly count: number;
  readonly priceMinor: number | null;
  readonly lineMinor: number | null;
}

export interface CategoryCost {
  readonly id: CostCategory;
  readonly planned: Figure;
  readonly unpricedLines: Figure;
}

export interface PlanTotals {
  readonly parts: Figure;
  readonly pieces: Figure;
  readonly bandedM: Figure;
  readonly finishM2: Figure;
  readonly litres: Figure;
  readonly sheets: Figure;
}

/** The part rows summed by section and by material, each in the order in which the part list first names it. */
export interface PlanGroups {
  readonly sections: readonly GroupPlan[];
  readonly materials: readonly GroupPlan[];
}

export interface GroupPlan {
  /** The section as typed, or the product id of the material; empty for the parts that have none. */
  readonly id: string;
  /** Part rows in the group. */
  readonly rows: number;
  readonly pieces: Figure;
  readonly bandedM: Figure;
  readonly finishM2: Figure;
}
