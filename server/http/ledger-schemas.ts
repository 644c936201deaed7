import { z } from 'zod';
import type {
  CostShare,
  CustomerSheet,
  LedgerHeading,
  OrderMoney,
  PaymentMoney,
  PriceHistory,
  QuoteLine,
  SpendPoint,
} from '../planning/ledger/ledger-plan.ts';
import type { CustomerSheetAnswer, LedgerAnswer, QuoteAnswer } from './contract.ts';
import { figureSchema, problemSchema } from './plan-schemas.ts';
import { costCategory } from './schemas.ts';

/** What the ledger and quotes look like in an answer; checked against the contract by the compiler. */

const f = figureSchema;
const sums = { budget: f, planned: f, ordered: f, paid: f, open: f, toOrder: f, forecast: f, left: f };
const minor = z.int().meta({ description: 'Whole minor units.' });

const heading = z.strictObject({ id: costCategory, ...sums }).meta({
  id: 'LedgerHeading',
}) satisfies z.ZodType<LedgerHeading>;

const costShare = z.strictObject({ id: z.string(), cost: f, perM2: f }).meta({
  id: 'CostShare',
}) satisfies z.ZodType<CostShare>;

const order = z.strictObject({
  id: z.string(),
  goods: f,
  charges: f,
  tax: f,
  total: f,
  paid: f,
  open: f,
  priceChange: f,
}) satisfies z.ZodType<OrderMoney>;

const history = z.strictObject({
  id: z.string(),
  points: z.array(
    z.strictObject({
      kind: z.enum(['catalogue', 'agreed', 'charged']),
      date: z.string().nullable(),
      supplierId: z.string(),
      packId: z.string(),
      packAmount: z.number(),
      priceMinor: minor,
    }),
  ),
}) satisfies z.ZodType<PriceHistory>;

export const ledgerAnswerSchema = z
  .strictObject({
    revision: z.int(),
    today: z.string(),
    currency: z.string(),
    currencyDigits: z.int(),
    headings: z.array(heading),
    totals: z.strictObject(sums),
    contingency: f,
    forecast: f,
    labour: f,
    forecastWithLabour: f,
    readyMade: f,
    saved: f,
    savedWithLabour: f,
    perFinishM2: f,
    parts: z.array(costShare),
    sections: z.array(costShare),
    orders: z.array(order),
    payments: z.array(z.strictObject({ id: z.string(), own: f }) satisfies z.ZodType<PaymentMoney>),
    series: z.array(
      z.strictObject({
        date: z.string(),
        orderedMinor: minor,
        paidMinor: minor,
      }) satisfies z.ZodType<SpendPoint>,
    ),
    prices: z.array(history),
    problems: z.array(problemSchema),
  })
  .meta({ id: 'LedgerAnswer' }) satisfies z.ZodType<LedgerAnswer>;

const sheetShape = {
  sender: z.string(),
  title: z.string(),
  customer: z.string(),
  date: z.string(),
  validUntil: z.string(),
  expired: z.boolean().nullable(),
  sections: z.array(
    z.strictObject({ name: z.string(), pieces: z.number().nullable(), parts: z.array(z.string()) }),
  ),
  lines: z.array(
    z.strictObject({
      kind: z.enum(['materials', 'work']),
      hours: z.number().nullable(),
      rateMinorPerHour: minor.nullable(),
      minor: minor.nullable(),
    }) satisfies z.ZodType<QuoteLine>,
  ),
  netMinor: minor.nullable(),
  taxPercent: z.number().nullable(),
  taxMinor: minor.nullable(),
  totalMinor: minor.nullable(),
  note: z.string(),
};
const customerSheet = z.strictObject(sheetShape).meta({
  id: 'CustomerSheet',
  description:
    'What the customer sees: no cost of materials and no markup; hours and rate only where the quote says so.',
}) satisfies z.ZodType<CustomerSheet>;

export const quoteAnswerSchema = z
  .strictObject({
    revision: z.int(),
    currency: z.string(),
    id: z.string(),
    materials: f,
    markup: f,
    labour: f,
    net: f,
    tax: f,
    total: f,
    sheet: customerSheet,
    problems: z.array(problemSchema),
  })
  .meta({ id: 'QuoteAnswer' }) satisfies z.ZodType<QuoteAnswer>;

export const customerSheetAnswerSchema = z
  .strictObject({ ...sheetShape, currency: z.string() })
  .meta({ id: 'CustomerSheetAnswer' }) satisfies z.ZodType<CustomerSheetAnswer>;
