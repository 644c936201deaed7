import type { BuyingPlan } from '../../../server/planning/buying/buying-plan.ts';
import { planPurchases } from '../../../server/planning/buying/plan-purchases.ts';
import type { LedgerPlan } from '../../../server/planning/ledger/ledger-plan.ts';
import { planLedger } from '../../../server/planning/ledger/plan-ledger.ts';
import { plan } from '../../../server/planning/plan.ts';
import type {
  CostCategory,
  ExtraLine,
  Order,
  OrderLine,
  Payment,
  ProjectInput,
  Receipt,
} from '../../../server/planning/project-input.ts';
import { aProject } from '../finish/sample-project.ts';

/** Builders for tests of the ledger: everything not named is empty or neutral. */

export const TODAY = '2027-03-10';

export function anOrder(id: string, more: Partial<Order> = {}): Order {
  return {
    id,
    supplierId: '',
    date: '2027-03-01',
    number: '',
    deliveryMinor: 0,
    surchargeMinor: 0,
    taxPercent: null,
    note: '',
    ...more,
  };
}

export function anOrderLine(
  id: string,
  orderId: string,
  category: CostCategory,
  count: number,
  unitPriceMinor: number | null,
  more: Partial<OrderLine> = {},
): OrderLine {
  return {
    id,
    orderId,
    productId: '',
    packId: '',
    name: `line ${id}`,
    category,
    count,
    packAmount: 1,
    unitPriceMinor,
    invoicedPriceMinor: null,
    taxPercent: null,
    ...more,
  };
}

export function aReceipt(
  id: string,
  orderLineId: string,
  kind: Receipt['kind'],
  count: number,
  date = '2027-03-05',
): Receipt {
  return { id, orderLineId, kind, date, count, batch: '', place: '' };
}

export function aPayment(id: string, amountMinor: number, more: Partial<Payment> = {}): Payment {
  return {
    id,
    kind: 'payment',
    date: '2027-03-07',
    supplierId: '',
    orderId: '',
    category: 'other',
    amountMinor,
    taxMinor: null,
    share: 1,
    receiptNumber: '',
    note: '',
    attachmentId: '',
    ...more,
  };
}

/** A line of the plan of so many pieces at a price. */
export function anExtra(
  id: string,
  category: CostCategory,
  quantity: number,
  unitPriceMinor: number | null,
): ExtraLine {
  return { id, productId: '', name: `extra ${id}`, category, quantity, unitPriceMinor, supplierId: '' };
}

/** The ledger of a project that is planned as any other. */
export function ledgerOf(
  given: Parameters<typeof aProject>[0] | ProjectInput,
  handsOnMin: number | null = null,
): LedgerPlan {
  return accountsOf(given, handsOnMin).ledger;
}

/** The same, with what is still to be ordered. */
export function accountsOf(
  given: Parameters<typeof aProject>[0] | ProjectInput,
  handsOnMin: number | null = null,
): { readonly buying: BuyingPlan; readonly ledger: LedgerPlan } {
  const input = aProject(given as Parameters<typeof aProject>[0]);
  const made = plan(input);
  const buying = planPurchases({ input, plan: made, today: TODAY, calendar: null });
  return { buying, ledger: planLedger({ input, plan: made, buying, handsOnMin, today: TODAY }) };
}

/** The heading's bare numbers. */
export function headingOf(ledger: LedgerPlan, id: CostCategory) {
  const heading = ledger.headings.find((one) => one.id === id);
  if (heading === undefined) throw new Error(`no heading ${id}`);
  const { budget, planned, ordered, paid, open, toOrder, forecast, left } = heading;
  return {
    budget: budget.value,
    planned: planned.value,
    ordered: ordered.value,
    paid: paid.value,
    open: open.value,
    toOrder: toOrder.value,
    forecast: forecast.value,
    left: left.value,
  };
}
