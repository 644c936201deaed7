import type { Figure } from '../figure.ts';
import type { Problem } from '../problem.ts';
import type { CostCategory } from '../project-input.ts';

/**
 * What the project may cost, costs and will cost. Every amount is whole minor units of the project's currency, with tax,
 * unless it says otherwise. Dates are YYYY-MM-DD.
 *
 * Rounding: tax is reckoned and rounded half up on each line; every sum is the sum of rounded lines. A payment for an
 * order is shared over the headings of its lines in proportion, whole units by largest remainder, so that no cent is
 * lost or made.
 */
export interface LedgerPlan {
  readonly headings: readonly LedgerHeading[];
  readonly totals: Omit<LedgerHeading, 'id'>;
  /** Added for what is still to be ordered. */
  readonly contingency: Figure;
  /** Forecast of all headings with the contingency. */
  readonly forecast: Figure;
  readonly labour: Figure;
  readonly forecastWithLabour: Figure;
  readonly readyMade: Figure;
  /** Ready-made price less forecast; above 0 the build is cheaper. */
  readonly saved: Figure;
  readonly savedWithLabour: Figure;
  /** Forecast per square metre of finished area. */
  readonly perFinishM2: Figure;
  /** Forecast without contingency, shared over the parts by what each takes of every line. */
  readonly parts: readonly CostShare[];
  readonly sections: readonly CostShare[];
  readonly orders: readonly OrderMoney[];
  readonly payments: readonly PaymentMoney[];
  /** By date; what lies before counts on. */
  readonly series: readonly SpendPoint[];
  readonly prices: readonly PriceHistory[];
  readonly problems: readonly Problem[];
}

export interface LedgerHeading {
  readonly id: CostCategory;
  /** Null value where no budget is set. */
  readonly budget: Figure;
  /** As the plan stands, everything bought at today's catalogue prices. Delivery is under "other". */
  readonly planned: Figure;
  /** Orders, and what was bought without one, less what came back. */
  readonly ordered: Figure;
  readonly paid: Figure;
  /** Ordered and not yet paid. */
  readonly open: Figure;
  /** Still to be ordered. */
  readonly toOrder: Figure;
  /** Ordered + still to be ordered; without contingency. */
  readonly forecast: Figure;
  /** Budget less forecast; below 0 the budget will not do. */
  readonly left: Figure;
}

export interface CostShare {
  /** Part id, or section as typed. */
  readonly id: string;
  readonly cost: Figure;
  readonly perM2: Figure;
}

export interface OrderMoney {
  readonly id: string;
  readonly goods: Figure;
  readonly charges: Figure;
  readonly tax: Figure;
  readonly total: Figure;
  readonly paid: Figure;
  readonly open: Figure;
  /** Charged above the agreed prices, with tax; below 0 it came cheaper. */
  readonly priceChange: Figure;
}

export interface PaymentMoney {
  readonly id: string;
  /** What this project bears of it; below 0 for a refund. */
  readonly own: Figure;
}

export interface SpendPoint {
  readonly date: string;
  readonly orderedMinor: number;
  readonly paidMinor: number;
}

export interface PriceHistory {
  /** Product id. */
  readonly id: string;
  readonly points: readonly PricePoint[];
}

export interface PricePoint {
  readonly kind: 'catalogue' | 'agreed' | 'charged';
  /** Null where a catalogue price has no date. */
  readonly date: string | null;
  readonly supplierId: string;
  readonly packId: string;
  readonly packAmount: number;
  /** One pack, without tax. */
  readonly priceMinor: number;
}

/**
 * One quote worked out: inner costs for the shop, and what the customer sees. Amounts without tax unless said, in whole
 * minor units. Rounding: markup, labour and tax are each rounded half up once; sums are sums of those.
 */
export interface QuotePlan {
  readonly id: string;
  readonly materials: Figure;
  readonly markup: Figure;
  readonly labour: Figure;
  readonly net: Figure;
  readonly tax: Figure;
  /** With tax; before tax where no rate is set. */
  readonly total: Figure;
  readonly sheet: CustomerSheet;
  readonly problems: readonly Problem[];
}

/** The customer's sheet: no cost of materials and no markup; hours and their rate only where the quote says so. */
export interface CustomerSheet {
  readonly sender: string;
  readonly title: string;
  readonly customer: string;
  readonly date: string;
  readonly validUntil: string;
  /** The day is past the validity; null when no date is set. */
  readonly expired: boolean | null;
  /** What is built: each section with its pieces. */
  readonly sections: readonly {
    readonly name: string;
    readonly pieces: number | null;
    readonly parts: readonly string[];
  }[];
  /** What the price without tax is the sum of; empty when only the price is shown. */
  readonly lines: readonly QuoteLine[];
  readonly netMinor: number | null;
  readonly taxPercent: number | null;
  readonly taxMinor: number | null;
  readonly totalMinor: number | null;
  readonly note: string;
}

export interface QuoteLine {
  readonly kind: 'materials' | 'work';
  /** Null beside materials. */
  readonly hours: number | null;
  readonly rateMinorPerHour: number | null;
  readonly minor: number | null;
}
