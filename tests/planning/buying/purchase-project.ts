import type { BuyingLine, BuyingPlan } from '../../../server/planning/buying/buying-plan.ts';
import type { BuyingCalendar } from '../../../server/planning/buying/dates/needed-by.ts';
import { planPurchases } from '../../../server/planning/buying/plan-purchases.ts';
import { expiredOnHand } from '../../../server/planning/buying/stock/expired-on-hand.ts';
import type { CalendarTaskPlan } from '../../../server/planning/calendar/calendar-plan.ts';
import { plan } from '../../../server/planning/plan.ts';
import type { Supplier } from '../../../server/planning/product.ts';
import type {
  DoneTask,
  ExtraLine,
  OnHand,
  OrderLine,
  Receipt,
} from '../../../server/planning/project-input.ts';
import { aPart, aProject, aRecipe, aStep } from '../finish/sample-project.ts';
import { NO_TERMS, PLAIN_STOCK } from '../ledger/no-ledger.ts';

/** Builders for tests of buying: one table to be coated twice, suppliers, orders, deliveries. */

/** A Monday. */
export const MONDAY = '2027-03-01';

export function aSupplier(id: string, more: Partial<Supplier> = {}): Supplier {
  return { id, name: `the ${id}`, leadTimeDays: 2, ...NO_TERMS, currency: 'USD', deliveryMinor: 0, ...more };
}

export function anOrderLine(
  id: string,
  productId: string,
  count: number,
  more: Partial<OrderLine> = {},
): OrderLine {
  return {
    id,
    orderId: '1',
    productId,
    packId: 'quart',
    name: productId,
    category: 'finish',
    count,
    packAmount: 1,
    unitPriceMinor: 1000,
    invoicedPriceMinor: null,
    taxPercent: null,
    ...more,
  };
}

export function aReceipt(
  id: string,
  orderLineId: string,
  count: number,
  more: Partial<Receipt> = {},
): Receipt {
  return { id, orderLineId, kind: 'received', date: MONDAY, count, batch: '', place: '', ...more };
}

export const AN_ORDER = {
  id: '1',
  supplierId: 'counter',
  date: MONDAY,
  number: '',
  deliveryMinor: 0,
  surchargeMinor: 0,
  taxPercent: null,
  note: '',
} as const;

export function aLeftover(id: string, productId: string, amount: number, more: Partial<OnHand> = {}): OnHand {
  return { id, productId, amount, count: 1, lengthMm: null, widthMm: null, ...PLAIN_STOCK, ...more };
}

export function aNeed(
  id: string,
  productId: string,
  quantity: number,
  more: Partial<ExtraLine> = {},
): ExtraLine {
  return {
    id,
    productId,
    name: productId,
    category: 'other',
    quantity,
    unitPriceMinor: null,
    supplierId: '',
    ...more,
  };
}

export function doneCoat(taskId: string, date: string, litres: number | null): DoneTask {
  return { id: `done-${taskId}`, taskId, start: `${date}T18:00`, end: `${date}T19:00`, litres };
}

/** Six square metres on one face, two coats of "varnish". */
export const TABLE = {
  parts: [
    {
      ...aPart({ id: '1', pieces: 6, showM2: 1, showRecipeId: '3' }).row,
      length: '1000',
      width: '1000',
      edgeFront: 'hidden' as const,
      edgeBack: 'hidden' as const,
      edgeLeft: 'hidden' as const,
      edgeRight: 'hidden' as const,
    },
  ],
  recipes: [aRecipe('3', [aStep('15', 'topcoat', { productId: 'varnish', coats: 2 })])],
};
export const COAT_1 = '3+-#1:show:15-1';
export const COAT_2 = '3+-#1:show:15-2';

const MIN_PER_DAY = 1440;

/** The calendar of the table: coat 1 on day 1 (Tuesday) and coat 2 on day 2, ready to assemble on day 4. */
export function tableCalendar(done: readonly string[] = []): BuyingCalendar {
  const task = (id: string, number: number, day: number): CalendarTaskPlan => ({
    id,
    batchId: '3+-#1',
    recipeId: '3',
    stepId: '15',
    number,
    kind: 'topcoat',
    name: 'varnish',
    method: 'brush',
    face: 'show',
    areaM2: 6,
    state: done.includes(id) ? 'done' : 'planned',
    startMinute: day * MIN_PER_DAY + 1080,
    endMinute: day * MIN_PER_DAY + 1140,
    handsOnMin: 60,
    scuffFirst: false,
    layFromMinute: null,
    layToMinute: null,
    touchDryMinute: null,
    handleDryMinute: null,
    allowedFromMinute: 0,
    allowedToMinute: null,
    heldBy: null,
  });
  return {
    firstDate: MONDAY,
    clockShifts: [],
    stale: false,
    plan: {
      state: 'planned',
      tasks: [task(COAT_1, 1, 1), task(COAT_2, 2, 2)],
      batches: [],
      readyToHandleMinute: 3 * MIN_PER_DAY,
      readyToAssembleMinute: 4 * MIN_PER_DAY,
      curedMinute: null,
      uncured: [],
      boundMinute: null,
      gap: null,
      proven: true,
      visits: 2,
      visitsProven: true,
      blocks: [],
      problems: [],
    },
  };
}

export type Bought = BuyingPlan & { readonly line: (id: string) => BuyingLine };

/** The buying plan on a day, made as the server makes it: planned without what is past its date, bought with all of it. */
export function purchases(
  more: Parameters<typeof aProject>[0],
  {
    today = MONDAY,
    calendar = null,
  }: { readonly today?: string; readonly calendar?: BuyingCalendar | null } = {},
): Bought {
  const input = aProject(more);
  const gone = expiredOnHand(input.onHand, input.catalogue.products, today);
  const planned = plan({ ...input, onHand: input.onHand.filter(({ id }) => !gone.has(id)) });
  const made = planPurchases({ input, plan: planned, today, calendar });
  return {
    ...made,
    line(id) {
      const found = made.lines.find((one) => one.id === id);
      if (found === undefined)
        throw new Error(`no line ${id} in ${made.lines.map((one) => one.id).join(', ')}`);
      return found;
    },
  };
}
