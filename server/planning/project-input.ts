import type { StockLayout } from './plan-output.ts';
import type { Catalogue } from './product.ts';

/**
 * Everything the planner needs to know about one project. Cells the user types freely (lengths, quantities) stay
 * text here: reading them is planning's job, so that an unreadable cell becomes a located problem and its row's
 * neighbours still compute.
 */

export type UnitSystem = 'metric' | 'us';
export type EdgeName = 'front' | 'back' | 'left' | 'right';
export const EDGE_NAMES = ['front', 'back', 'left', 'right'] as const satisfies readonly EdgeName[];

/** How the length unit of a US customary project is printed. Metric projects print millimetres. */
export type InchStyle = 'fraction' | 'decimal';

export interface ProjectSettings {
  readonly name: string;
  readonly units: UnitSystem;
  readonly inchStyle: InchStyle;
  /** Finest fraction printed: 2, 4, 8, 16 or 32. */
  readonly inchDenominator: number;
  /** ISO 4217. */
  readonly currency: string;
  /** Percent added to prices, e.g. 8 or 20; null when the user has not said (totals then say "before tax"). */
  readonly taxPercent: number | null;
  /** Which end of a coverage range the buy list reckons with. */
  readonly coverageChoice: 'low' | 'typical' | 'high';
  /** Extra strip length at each end of a band, mm. */
  readonly overhangMm: number;
  /** Band width beyond the panel thickness at each face, mm. */
  readonly trimAllowanceMm: number;
  /** Spare strips per banding product, each as long as its longest strip. */
  readonly spareStrips: number;
  /** Order in which edges are banded; later strips cover the ends of earlier ones. A permutation of the four edges. */
  readonly bandingOrder: readonly EdgeName[];
  readonly kerfMm: number;
  /** Factory edge trimmed off each side of a full sheet, mm. */
  readonly sheetTrimMm: number;
  /** A sheet is cut in so many stages, cuts of one direction each, at most; trimming a piece is none. Null: any number. */
  readonly cutStages: 2 | 3 | null;
  /** Share of finish lost to spills, filters and wet edges, e.g. 0.05. */
  readonly finishLoss: number;
  /** First day of finishing, YYYY-MM-DD; empty for today. */
  readonly startDate: string;
  /** IANA name, e.g. Europe/Berlin: the clock that working hours, pins and facts are given in. */
  readonly timeZone: string;
  /** People who can work at the same time, 1 to 20. */
  readonly hands: number;
  /** Area on which wet parts can lie, m2; null when it never runs out. */
  readonly rackM2: number | null;
  /** Most face area coated in one go, m2; null for as much as rack and working time allow. */
  readonly largestBatchM2: number | null;
  /** Sanding dust cannot reach wet coats: another room, or outdoors. */
  readonly sandsApart: boolean;
  /** How much warmer than the air the wood is when it is coated, C; below 0 for parts brought in from the cold. */
  readonly woodWarmerC: number;
  /** Drying is taken to be twice as fast in air so many degrees warmer, C. */
  readonly dryingDoublesPerC: number;
  /** Waterborne coats are taken to dry more slowly in damp air. */
  readonly dryingUsesHumidity: boolean;
  /**
   * What is known of the shop's air: the same at all hours (the day values), one level by day and one by night, or the
   * rows of `climateRows`, which the day values fill where there is none.
   */
  readonly climateKind: 'constant' | 'day-night' | 'hourly';
  readonly dayC: number;
  readonly nightC: number;
  /** Relative humidity, percent. */
  readonly dayHumidity: number;
  readonly nightHumidity: number;
  /** Batches are kept so small that the vapour of one coat stays below the health limit, where that is known. */
  readonly keepUnderHealthLimit: boolean;
  /** The room in which coats are laid, m; null when not known. */
  readonly roomLengthM: number | null;
  readonly roomWidthM: number | null;
  readonly roomHeightM: number | null;
  /** Where fresh air comes from: a fan, measured air changes, or an open window or door. */
  readonly airKind: 'fan' | 'air-changes' | 'opening';
  /** What the fan is rated at, blowing freely, m3/h; null when not known, 0 for none. */
  readonly fanM3PerHour: number | null;
  /** Share of the rating that arrives through duct, grille and screen, above 0 to 1. */
  readonly fanDerating: number;
  readonly airChangesPerHour: number | null;
  /** Free area of the open window or door, m2; null when not known. */
  readonly openingM2: number | null;
  /** Wind the opening is reckoned with, m/s. */
  readonly windMPerS: number;
  /** 1 for perfectly mixed air, up to 10 for poor. */
  readonly mixingFactor: number;
  readonly outdoorC: number | null;
  /** Price of a kilowatt-hour of heat, minor units; null when not known. */
  readonly heatPricePerKwhMinor: number | null;
  /** `peak`: shift-long limits are held at every moment; `averages`: as 8-hour averages. */
  readonly healthBasis: 'peak' | 'averages';
  /** Added in the forecast to what is still to be ordered, percent. */
  readonly contingencyPercent: number;
  /** What an hour of one's own work counts, minor units; null when it is not counted. */
  readonly rateMinorPerHour: number | null;
  /** What the same piece costs ready made, minor units with tax; null when not known. */
  readonly readyMadeMinor: number | null;
}

/** `hidden`: in a joint or against a wall, neither banded nor finished. `bare`: seen, finished but not banded. Else a banding product id. */
export type EdgeTreatment = 'hidden' | 'bare' | (string & {});

export interface PartInput {
  readonly id: string;
  readonly name: string;
  /** Free text grouping: "left bookcase". Empty when none. */
  readonly section: string;
  /** As typed: "4". */
  readonly quantity: string;
  /** As typed: "600", "23 5/8", "2'-6\"". Length runs along the grain, left to right. */
  readonly length: string;
  readonly width: string;
  readonly shape: 'rectangle' | 'round';
  /** Product id of a sheet or board; empty when not chosen yet. */
  readonly materialId: string;
  /** Grain direction of the material along the part's length, across it, or free to turn. */
  readonly grain: 'along' | 'across' | 'free';
  readonly edgeFront: EdgeTreatment;
  readonly edgeBack: EdgeTreatment;
  readonly edgeLeft: EdgeTreatment;
  readonly edgeRight: EdgeTreatment;
  /** Corner radii as typed; empty is a square corner. */
  readonly radiusFrontLeft: string;
  readonly radiusFrontRight: string;
  readonly radiusBackLeft: string;
  readonly radiusBackRight: string;
  /** Recipe ids; empty means the face gets no finish. Seen edges (banded or bare) get the show face's recipe, else the back's. */
  readonly showRecipeId: string;
  readonly backRecipeId: string;
  readonly note: string;
  /** Parts of one name and material come from one sheet, side by side in their order; empty: no such wish. */
  readonly grainMatch: string;
}

export type StepKind = 'sand' | 'dust' | 'condition' | 'stain' | 'seal' | 'topcoat' | 'scuff' | 'cure';
/** Steps that lay a liquid; the others are dry work or waiting. */
export const COAT_STEPS = ['condition', 'stain', 'seal', 'topcoat'] as const satisfies readonly StepKind[];

export type ApplicationMethod = 'brush' | 'roller' | 'wipe' | 'spray-hvlp' | 'spray-airless' | 'spray-air';

export interface RecipeStep {
  readonly id: string;
  readonly kind: StepKind;
  /** Finish product (coat steps), abrasive (sand, scuff), or empty. A coat step has either a product or a blend. */
  readonly productId: string;
  readonly blendId: string;
  /** How many times the step is done, 1 to 20. */
  readonly coats: number;
  readonly method: ApplicationMethod;
  /** Share of the liquid that ends on the work, 0 to 1; null takes the method's figure. */
  readonly transferEfficiency: number | null;
  /** Thinner mixed in, as a share of the product's volume (0.1 = 10 %). 0 for none. */
  readonly thinning: number;
  readonly thinnerId: string;
  /** Litres that stay in brush, tray or gun per coat; null takes the method's figure. */
  readonly sessionLossL: number | null;
  readonly note: string;
}

export interface Recipe {
  readonly id: string;
  readonly name: string;
  readonly steps: readonly RecipeStep[];
  /** Wait for the first face to be dry to handle and flip, or coat both at once on points. */
  readonly faces: 'flip' | 'points';
}

export interface BlendComponent {
  readonly id: string;
  readonly productId: string;
  /** Parts by volume. */
  readonly parts: number;
}

/** A stain mixed from several products, by volume. */
export interface Blend {
  readonly id: string;
  readonly name: string;
  readonly components: readonly BlendComponent[];
}

/** Something used at a rate: rags per square metre, glue per metre of band, filler per part. */
export interface UsageRule {
  readonly id: string;
  readonly productId: string;
  /** `coat-area`: every square metre of every coat; `finish-area`: every finished square metre once. */
  readonly per: 'finish-area' | 'coat-area' | 'banding-metre' | 'part' | 'project';
  /** Amount in the product's unit; null takes the product's own catalogue rate. */
  readonly rate: number | null;
}

/** A line the user adds by hand: hinges, screws, delivery. */
export interface ExtraLine {
  readonly id: string;
  /** Catalogue product, or empty for a free line. */
  readonly productId: string;
  readonly name: string;
  readonly category: CostCategory;
  readonly quantity: number;
  /** For free lines: price of one, minor units without tax; null when unknown. */
  readonly unitPriceMinor: number | null;
  readonly supplierId: string;
}

/** What is already on the shelf for this project. */
export interface OnHand {
  readonly id: string;
  readonly productId: string;
  /** In the product's unit. For rolls and boards: the length of one piece. For sheets: 1. */
  readonly amount: number;
  /** How many such pieces, cans or rolls. */
  readonly count: number;
  /** Sheet offcuts: usable size, mm. */
  readonly lengthMm: number | null;
  readonly widthMm: number | null;
  /** Where it stands: "shelf 2". Left out, like the next three, is empty. */
  readonly place?: string;
  readonly batch?: string;
  /** YYYY-MM-DD, or empty when it is unopened or not known. */
  readonly openedOn?: string;
  /** YYYY-MM-DD, or empty: then the catalogue's shelf life counts from `openedOn`, where both are known. */
  readonly bestBefore?: string;
  /** The sheet of this project's cutting plan that the offcut was cut from, by the plan's own name for it; else empty. */
  readonly keptFrom?: string;
}

/** A thickness the user measured; it replaces the catalogue's typical figure everywhere in this project. */
export interface Measurement {
  readonly id: string;
  readonly productId: string;
  readonly thicknessMm: number;
}

/** A named size that `=` cells may use. */
export interface NamedSize {
  readonly id: string;
  readonly name: string;
  /** As typed: a length or an expression. */
  readonly value: string;
  readonly note: string;
}

/** One stretch of a weekday in which there are hands in the shop. */
export interface ShopHours {
  readonly id: string;
  /** 0 is Monday, 6 is Sunday. */
  readonly weekday: number;
  /** As typed: "18:00", "6 pm". */
  readonly from: string;
  readonly to: string;
}

/** A day without work, whatever the weekday. Dates are YYYY-MM-DD. */
export interface DayOff {
  readonly id: string;
  readonly date: string;
  readonly note: string;
}

/** The shop's air from a moment on, until the next row. */
export interface ClimateRow {
  readonly id: string;
  readonly date: string;
  /** "14:00"; empty for the whole day. */
  readonly time: string;
  readonly temperatureC: number | null;
  /** Null takes the day value of the settings. */
  readonly humidityPercent: number | null;
}

/** A task of the calendar that is to start at a moment of the user's choice. */
export interface PinnedTask {
  readonly id: string;
  readonly taskId: string;
  /** YYYY-MM-DDTHH:MM in the project's time zone. */
  readonly start: string;
}

/** A task of the calendar that is done: from the first to the last stroke, in the project's time zone. */
export interface DoneTask {
  readonly id: string;
  readonly taskId: string;
  readonly start: string;
  readonly end: string;
  /** What was used, where it was measured. */
  readonly litres: number | null;
}

/** When a product is in the shop; products without a row are there already. */
export interface Arrival {
  readonly id: string;
  readonly productId: string;
  readonly date: string;
}

/** What may be spent under one heading of the ledger, whole minor units with tax. */
export interface Budget {
  readonly id: string;
  readonly category: CostCategory;
  readonly amountMinor: number;
}

/** An order as it was sent to a supplier. Charges are whole minor units without tax. */
export interface Order {
  readonly id: string;
  readonly supplierId: string;
  /** YYYY-MM-DD. */
  readonly date: string;
  /** The supplier's own number of the order. */
  readonly number: string;
  readonly deliveryMinor: number;
  readonly surchargeMinor: number;
  /** On delivery and surcharge; null takes the project's. */
  readonly taxPercent: number | null;
  readonly note: string;
}

/** So many packs of one kind within an order. */
export interface OrderLine {
  readonly id: string;
  readonly orderId: string;
  /** Empty for something that is not in the catalogue. */
  readonly productId: string;
  readonly packId: string;
  readonly name: string;
  readonly category: CostCategory;
  /** Packs ordered. */
  readonly count: number;
  /** What one pack holds, in the product's unit. */
  readonly packAmount: number;
  /** Agreed price of one pack, whole minor units without tax; null when not known yet. */
  readonly unitPriceMinor: number | null;
  /** What the supplier then charged for one pack; null while it is the agreed price. */
  readonly invoicedPriceMinor: number | null;
  /** Null takes the project's. */
  readonly taxPercent: number | null;
}

/** Packs of an order line that came on one day, or that were sent back. */
export interface Receipt {
  readonly id: string;
  readonly orderLineId: string;
  readonly kind: 'received' | 'returned';
  readonly date: string;
  readonly count: number;
  readonly batch: string;
  readonly place: string;
}

/** Something taken from stock by hand: spilled, used up on a trial, given away. In the product's unit. */
export interface StockUse {
  readonly id: string;
  readonly productId: string;
  readonly date: string;
  readonly amount: number;
  readonly note: string;
}

/** Money that went out, or came back. */
export interface Payment {
  readonly id: string;
  readonly kind: 'payment' | 'refund';
  readonly date: string;
  readonly supplierId: string;
  /** The order it pays for, in whole or in part; empty for something bought without one. */
  readonly orderId: string;
  /** Heading of something bought without an order; an order's payment goes by the lines of the order. */
  readonly category: CostCategory;
  /** Whole minor units with tax, above 0 also for a refund. */
  readonly amountMinor: number;
  /** Of which tax; null when not said. */
  readonly taxMinor: number | null;
  /** How much of it this project bears, 0 to 1; the rest belongs to other projects. */
  readonly share: number;
  readonly receiptNumber: string;
  readonly note: string;
  /** Id of a picture or PDF kept with the project; empty for none. */
  readonly attachmentId: string;
}

/** A product the user allows to be bought in place of another, amount for amount. */
export interface Substitute {
  readonly id: string;
  readonly productId: string;
  readonly substituteId: string;
}

/** Own hours at work. */
export interface WorkHours {
  readonly id: string;
  readonly date: string;
  readonly hours: number;
  readonly note: string;
}

/** An offer to a customer. */
export interface Quote {
  readonly id: string;
  readonly title: string;
  readonly customer: string;
  readonly date: string;
  readonly validUntil: string;
  /** Materials without tax, minor units, as once agreed; null follows the plan. */
  readonly materialsMinor: number | null;
  readonly hours: number;
  /** Null takes the project's own rate. */
  readonly rateMinorPerHour: number | null;
  /** Added to the materials. */
  readonly markupPercent: number;
  /** Null takes the project's; where that is null too, the price is before tax. */
  readonly taxPercent: number | null;
  readonly note: string;
  /** Whom it is from, as it stands at the head of the sheet: name, address, telephone, on lines of their own. */
  readonly sender: string;
  /** What the sheet breaks the price down into; `work`: materials with their markup, and the hours with their rate. */
  readonly shown: 'price' | 'work';
}

export type CostCategory =
  | 'sheets'
  | 'boards'
  | 'banding'
  | 'finish'
  | 'thinner'
  | 'abrasives'
  | 'glue'
  | 'filler'
  | 'hardware'
  | 'consumables'
  | 'other';

export const COST_CATEGORIES = [
  'sheets',
  'boards',
  'banding',
  'finish',
  'thinner',
  'abrasives',
  'glue',
  'filler',
  'hardware',
  'consumables',
  'other',
] as const satisfies readonly CostCategory[];

/**
 * How one sheet or board is cut, in the terms of a cutting question: a piece, or cuts side by side along one direction.
 * The sizes follow from the question.
 */
export type FoundCut =
  | { readonly piece: number; readonly turned: boolean }
  | { readonly along: 'length' | 'width'; readonly cuts: readonly FoundCut[] };

export interface FoundSheet {
  /** Which stock of the question. */
  readonly stock: number;
  readonly count: number;
  readonly cut: FoundCut;
}

/** A cutting plan found earlier by a longer search, for the question with this hash and no other. */
export interface FoundLayout {
  readonly question: string;
  readonly sheets: readonly FoundSheet[];
  /** No plan costs less, in the unit of the question's costs. */
  readonly boundCost: number;
  /** No plan buys fewer sheets or boards. */
  readonly boundStocks: number;
}

export interface ProjectInput {
  readonly settings: ProjectSettings;
  readonly sizes: readonly NamedSize[];
  readonly parts: readonly PartInput[];
  readonly recipes: readonly Recipe[];
  readonly blends: readonly Blend[];
  readonly rules: readonly UsageRule[];
  readonly extras: readonly ExtraLine[];
  readonly onHand: readonly OnHand[];
  readonly measurements: readonly Measurement[];
  readonly shopHours: readonly ShopHours[];
  readonly daysOff: readonly DayOff[];
  readonly climateRows: readonly ClimateRow[];
  readonly pins: readonly PinnedTask[];
  readonly doneTasks: readonly DoneTask[];
  readonly arrivals: readonly Arrival[];
  readonly budgets: readonly Budget[];
  readonly orders: readonly Order[];
  readonly orderLines: readonly OrderLine[];
  readonly receipts: readonly Receipt[];
  readonly stockUses: readonly StockUse[];
  readonly payments: readonly Payment[];
  readonly substitutes: readonly Substitute[];
  readonly workHours: readonly WorkHours[];
  readonly quotes: readonly Quote[];
  readonly catalogue: Catalogue;
  /** Cutting plans found earlier; one is used where its question is asked again, after it has been checked. */
  readonly foundLayouts?: readonly FoundLayout[];
  /** Cutting plans whose sheets are being cut: they stay as they are as far as the part list allows. */
  readonly begunPlans?: readonly BegunPlan[];
}

/** The cutting plan of one material as it was when a piece was last ticked as cut. */
export interface BegunPlan {
  readonly materialId: string;
  readonly layouts: readonly {
    /** Names the layout, see layoutKey. */
    readonly key: string;
    /** So many of its equal sheets, from the first, up to the last one with a piece ticked. */
    readonly begun: number;
    readonly layout: StockLayout;
  }[];
}
