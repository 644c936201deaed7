/**
 * Catalogue products as the planning core sees them. Every number carries its evidence; unknown is null, never 0.
 */

import type { Solvent } from './air/solvent.ts';

export type ProductKind =
  | 'sheet'
  | 'board'
  | 'banding'
  | 'finish'
  | 'thinner'
  | 'abrasive'
  | 'glue'
  | 'filler'
  | 'hardware'
  | 'consumable';

/** How far a number can be leaned on. `practice` prints as "common practice, no source". */
export type Basis = 'published' | 'label' | 'practice' | 'memory' | 'user';

export interface Evidence {
  readonly basis: Basis;
  /** Title, table or page, as printed to the reader. Empty only for `practice`, `memory` and `user`. */
  readonly source: string;
  /** ISO date on which the source was read or the value entered; null where not known. */
  readonly readOn: string | null;
  readonly note?: string | null;
}

/** One catalogue figure. Single-valued figures use `typical` and leave `low` and `high` null. */
export interface ProductFigure extends Evidence {
  readonly low: number | null;
  readonly typical: number | null;
  readonly high: number | null;
  /** The unit fixed for this figure's name in PRODUCT_FIGURES. */
  readonly unit: string;
}

/**
 * Figure names, the kinds they belong to and their units. The database, the forms and the file schema all follow
 * this one table.
 */
export const PRODUCT_FIGURES = {
  /** Nominal thickness as sold. */
  thicknessNominal: { unit: 'mm', kinds: ['sheet', 'board'] },
  /** Typical measured thickness; the low and high of a published tolerance where one is known. For banding: band thickness. */
  thicknessActual: { unit: 'mm', kinds: ['sheet', 'board', 'banding'] },
  /** Band width, or actual board width. */
  width: { unit: 'mm', kinds: ['board', 'banding'] },
  /** Area one litre covers per coat on wood (spreading rate). */
  coverage: { unit: 'm2/L', kinds: ['finish'] },
  solidsByVolume: { unit: 'percent', kinds: ['finish'] },
  dryFilm: { unit: 'um', kinds: ['finish'] },
  /** First coat on bare wood uses this many times the litres that `coverage` says. */
  firstCoatFactor: { unit: 'ratio', kinds: ['finish'] },
  touchDry: { unit: 'min', kinds: ['finish'] },
  handleDry: { unit: 'min', kinds: ['finish'] },
  cure: { unit: 'min', kinds: ['finish'] },
  /** Wipe off, or keep a wet edge, within this time. */
  workingTime: { unit: 'min', kinds: ['finish', 'glue', 'filler'] },
  potLife: { unit: 'min', kinds: ['finish', 'glue'] },
  /** Mass that evaporates per litre as supplied (the material figure, not "less water"). */
  voc: { unit: 'g/L', kinds: ['finish', 'thinner'] },
  density: { unit: 'g/L', kinds: ['finish', 'thinner', 'glue', 'filler'] },
  flashPoint: { unit: 'C', kinds: ['finish', 'thinner'] },
  minTemperature: { unit: 'C', kinds: ['finish', 'glue'] },
  maxTemperature: { unit: 'C', kinds: ['finish', 'glue'] },
  maxHumidity: { unit: 'percent', kinds: ['finish'] },
  shelfLifeUnopened: { unit: 'months', kinds: ['finish', 'thinner', 'glue', 'filler'] },
  shelfLifeOpened: { unit: 'months', kinds: ['finish', 'thinner', 'glue', 'filler'] },
  /** Area one piece (disc, sheet, pad, rag) serves before it is spent. */
  areaPerPiece: { unit: 'm2', kinds: ['abrasive', 'consumable'] },
  /** Amount used per metre of edge banding or glue line. */
  usePerMetre: { unit: 'unit/m', kinds: ['glue'] },
  /** Amount used per square metre finished. */
  usePerArea: { unit: 'unit/m2', kinds: ['filler', 'glue', 'consumable'] },
} as const satisfies Record<string, { unit: string; kinds: readonly ProductKind[] }>;

export type ProductFigureName = keyof typeof PRODUCT_FIGURES;

/** One allowed interval for the next coat, minutes after the last one was laid. `toMin: null` means no upper end. */
export interface RecoatInterval {
  readonly fromMin: number;
  readonly toMin: number | null;
  /** True when the dry coat must be scuff-sanded first. */
  readonly scuff: boolean;
}

/** A pack as sold: a can, a roll, a sheet of one size, a board length, a box. One supplier's offer. */
export interface Pack extends Evidence {
  readonly id: string;
  /** As ordered: "quart", "roll 25 m", "2440 x 1220". */
  readonly label: string;
  /** In the product's unit: litres in a can, metres on a roll or in a board, pieces in a box, 1 for a sheet. */
  readonly amount: number;
  /** Sheets only: length along the grain. */
  readonly lengthMm: number | null;
  readonly widthMm: number | null;
  /** Null when the price is not known. Whole minor units, without tax. */
  readonly priceMinor: number | null;
  /** ISO 4217 code the price is in. */
  readonly currency: string;
  readonly supplierId: string | null;
}

export type FinishRole =
  | 'conditioner'
  | 'stain'
  | 'sealer'
  | 'topcoat'
  | 'primer'
  | 'paint'
  | 'oil'
  | 'hardener';
export type Carrier = 'oil' | 'water' | 'alcohol' | 'lacquer-solvent';

/** The choices that are not numbers. Only the ones that fit the product's kind are set. */
export interface ProductChoices {
  readonly species?: string;
  /** banding: does its thickness come off the cut size? `auto`: yes from 1 mm up. */
  readonly deducted?: 'auto' | 'yes' | 'no';
  readonly bandMaterial?: 'veneer' | 'solid' | 'plastic';
  readonly role?: FinishRole;
  readonly carrier?: Carrier;
  readonly colour?: string;
  /** finish, two-part: the product mixed in, and the volumes base : hardener. */
  readonly hardenerId?: string;
  readonly mixBase?: number;
  readonly mixHardener?: number;
  readonly grit?: number;
  /** board: the name it is sold under, "1x4". */
  readonly nominal?: string;
  /** finish: rags and wipes of it can heat and ignite by themselves. */
  readonly rags?: 'self-heating' | 'no' | 'unknown';
}

/**
 * A solvent that evaporates from a product, as its safety data sheet names it. The three figures are the sheet's own; null
 * takes those of the solvent list.
 */
export interface SolventShare {
  /** Of the solvent list: "mineral-spirits". */
  readonly solventId: string;
  /** Share of the mass that evaporates, 0 to 1; null when not known. */
  readonly share: number | null;
  readonly molarMassGPerMol: number | null;
  /** Lower explosive limit, percent by volume. */
  readonly lelPercent: number | null;
  /** Exposure limit over a shift. */
  readonly limitMgPerM3: number | null;
}

export type ProductUnit = 'pcs' | 'm' | 'L' | 'g';

export interface Product {
  /** Stable key, lower case words joined by hyphens: "birch-ply-18". */
  readonly id: string;
  readonly kind: ProductKind;
  readonly name: string;
  /** Short name shown in grid cells and accepted when typed: "birch 18". Unique in the catalogue. */
  readonly shortName: string;
  /** Unit in which need, on hand and pack amounts are counted. */
  readonly unit: ProductUnit;
  readonly choices: ProductChoices;
  readonly figures: Readonly<Partial<Record<ProductFigureName, ProductFigure>>>;
  /** Allowed recoat intervals; empty when not known. Evidence in `recoatEvidence`. */
  readonly recoat: readonly RecoatInterval[];
  readonly recoatEvidence: Evidence | null;
  /** What evaporates; absent when not known. Evidence in `solventsEvidence`. */
  readonly solvents?: readonly SolventShare[];
  readonly solventsEvidence?: Evidence | null;
  readonly packs: readonly Pack[];
  /** Retired products stay readable in old projects but are not offered. */
  readonly retired: boolean;
  /** Shipped with the program, or the user's own. */
  readonly origin: 'shipped' | 'user';
  readonly note: string | null;
}

export interface Supplier {
  readonly id: string;
  readonly name: string;
  /** Working days of the supplier from ordering to having it; null when not known. */
  readonly leadTimeDays: number | null;
  /** ISO 4217 code the charges below are in; empty while there are none. */
  readonly currency: string;
  /** Whole minor units without tax, once per order; null when not known. */
  readonly deliveryMinor: number | null;
  /** Goods of this much are delivered free; null when there is no such rule, or it is not known. */
  readonly freeDeliveryFromMinor: number | null;
  /** Goods of less than this carry the surcharge; null when there is none. */
  readonly minimumOrderMinor: number | null;
  readonly surchargeMinor: number | null;
  /** Days on which orders are worked on and delivered: 0 is Monday, 6 is Sunday. */
  readonly workingDays: readonly number[];
  /** A retired supplier stays readable in old orders but is not offered. */
  readonly retired: boolean;
}

export interface Catalogue {
  readonly products: readonly Product[];
  readonly suppliers: readonly Supplier[];
  /** The solvents that products name; absent where the air is not asked about. */
  readonly solvents?: readonly Solvent[];
}
