import type { Figure } from '../figure.ts';
import type { Problem } from '../problem.ts';
import type { CostCategory } from '../project-input.ts';

/**
 * What stands between the plan and a full shelf, on one day: what is still to be ordered, from whom and until when, what
 * is on its way, and what is in the shop. Dates are YYYY-MM-DD; money is whole minor units, without tax unless it says
 * so; amounts are in the product's unit.
 */
export interface BuyingPlan {
  readonly today: string;
  readonly lines: readonly BuyingLine[];
  /** What is still to be ordered, by supplier; the one without an id holds lines without a supplier. */
  readonly baskets: readonly SupplierBasket[];
  readonly choice: SupplierChoiceResult;
  readonly orders: readonly OrderState[];
  readonly stock: readonly StockItem[];
  /** Coverage the user got in coats that are done. Offered beside the catalogue's figure; nothing reckons with it. */
  readonly coverages: readonly GotCoverage[];
  readonly problems: readonly Problem[];
}

/**
 * covered: nothing to buy. to-order: something is to be ordered. part-ordered: so, and some is ordered. ordered: nothing
 * is here yet. part-received: some is here. received: all ordered packs are here.
 */
export type BuyingState = 'covered' | 'to-order' | 'part-ordered' | 'ordered' | 'part-received' | 'received';

export interface BuyingLine {
  /** As the line of `plan.buy`: product id, or `extra-<id>`. */
  readonly id: string;
  readonly productId: string | null;
  readonly name: string;
  readonly category: CostCategory;
  readonly unit: 'pcs' | 'm' | 'L' | 'g';
  /** Of the whole project, with what coats took more or less than reckoned and what was taken by hand. */
  readonly need: Figure;
  /** Usable leftovers; what has passed its date is not counted. */
  readonly onHand: Figure;
  /** Ordered and not sent back. */
  readonly ordered: Figure;
  readonly received: Figure;
  readonly toOrder: Figure;
  /** Still to be ordered. */
  readonly packs: readonly OrderPack[];
  readonly cost: Figure;
  readonly tax: Figure;
  readonly supplierId: string | null;
  readonly supplierName: string;
  /** Product bought in place of this one, where the user allows it and it comes cheaper; else null. */
  readonly substituteId: string | null;
  readonly state: BuyingState;
  /** First day it is needed; null when the calendar does not say. */
  readonly neededBy: string | null;
  /** Last day to order; null when the need date or the lead time is not known, or nothing is to be ordered. */
  readonly orderBy: string | null;
  readonly orderByWorking: readonly string[];
  readonly urgency: 'late' | 'today' | 'soon' | 'none';
  readonly notes: readonly string[];
}

export interface OrderPack {
  readonly packId: string;
  readonly productId: string | null;
  readonly label: string;
  readonly amount: number;
  readonly count: number;
  readonly priceMinor: number | null;
  readonly lineMinor: number | null;
}

export interface SupplierBasket {
  readonly id: string;
  readonly name: string;
  /** Ids of the lines, in their order. */
  readonly lineIds: readonly string[];
  readonly goods: Figure;
  readonly delivery: Figure;
  readonly surcharge: Figure;
  readonly tax: Figure;
  /** With tax. */
  readonly total: Figure;
  /** Earliest of its lines. */
  readonly orderBy: string | null;
  readonly notes: readonly string[];
}

/** How the suppliers were chosen: goods, delivery and surcharges together, without tax. */
export interface SupplierChoiceResult {
  readonly total: Figure;
  /** No choice costs less. */
  readonly bound: Figure;
  readonly proven: boolean;
  /** The same goods each from where they are cheapest, charges included: what choosing together saves is the difference. */
  readonly lineByLine: Figure;
}

export interface OrderState {
  readonly id: string;
  readonly supplierId: string;
  readonly supplierName: string;
  readonly date: string;
  readonly state: 'ordered' | 'part-received' | 'received' | 'empty';
  /** When it should be here, by the supplier's lead time; null when not known. */
  readonly expectedOn: string | null;
  /** Expected before today and not all here. */
  readonly overdue: boolean;
  readonly lines: readonly OrderLineState[];
}

export interface OrderLineState {
  readonly id: string;
  readonly ordered: number;
  readonly received: number;
  readonly returned: number;
  /** Packs still to come. */
  readonly open: number;
}

export interface StockItem {
  /** Product id. */
  readonly id: string;
  readonly name: string;
  readonly unit: 'pcs' | 'm' | 'L' | 'g';
  readonly leftovers: Figure;
  /** Past its date, not counted. */
  readonly expired: Figure;
  readonly received: Figure;
  /** By coats that are done and by hand. */
  readonly used: Figure;
  /** leftovers + received - used, not below 0. */
  readonly now: Figure;
  readonly pieces: readonly StockPiece[];
}

/** One row of what is on hand, or one delivery. */
export interface StockPiece {
  readonly from: 'onHand' | 'receipts';
  readonly id: string;
  readonly amount: number;
  readonly place: string;
  readonly batch: string;
  readonly openedOn: string;
  /** Last good day: as given, or opened on plus the catalogue's shelf life; null when not known. */
  readonly goodUntil: string | null;
  readonly expired: boolean;
}

export interface GotCoverage {
  /** Product id. */
  readonly id: string;
  readonly name: string;
  /** m2 per litre over all coats done with measured litres. */
  readonly got: Figure;
  readonly areaM2: number;
  readonly litres: number;
  readonly coats: number;
  /** The catalogue's own figure, m2 per litre. */
  readonly catalogueLow: number | null;
  readonly catalogueTypical: number | null;
  readonly catalogueHigh: number | null;
}
