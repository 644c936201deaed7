import { z } from 'zod';
import type {
  BuyingLine,
  GotCoverage,
  OrderLineState,
  OrderPack,
  OrderState,
  StockItem,
  StockPiece,
  SupplierBasket,
  SupplierChoiceResult,
} from '../planning/buying/buying-plan.ts';
import type { BuyingAnswer, SupplierMessage } from './contract.ts';
import { figureSchema, problemSchema } from './plan-schemas.ts';
import { costCategory } from './schemas.ts';

/** What the buy list, the orders and the stock look like in an answer; checked against the contract by the compiler. */

const text = z.string();
const date = z.string().meta({ description: 'YYYY-MM-DD' });
const dateOrNull = z.string().nullable();
const minorOrNull = z.int().nullable();
const unit = z.enum(['pcs', 'm', 'L', 'g']);

const pack = z.strictObject({
  packId: text,
  productId: text.nullable(),
  label: text,
  amount: z.number(),
  count: z.int(),
  priceMinor: minorOrNull,
  lineMinor: minorOrNull,
}) satisfies z.ZodType<OrderPack>;

const line = z
  .strictObject({
    id: text,
    productId: text.nullable(),
    name: text,
    category: costCategory,
    unit,
    need: figureSchema,
    onHand: figureSchema,
    ordered: figureSchema,
    received: figureSchema,
    toOrder: figureSchema,
    packs: z.array(pack),
    cost: figureSchema,
    tax: figureSchema,
    supplierId: text.nullable(),
    supplierName: text,
    substituteId: text.nullable(),
    state: z.enum(['covered', 'to-order', 'part-ordered', 'ordered', 'part-received', 'received']),
    neededBy: dateOrNull,
    orderBy: dateOrNull,
    orderByWorking: z.array(text),
    urgency: z.enum(['late', 'today', 'soon', 'none']),
    notes: z.array(text),
  })
  .meta({ id: 'BuyingLine' }) satisfies z.ZodType<BuyingLine>;

const basket = z.strictObject({
  id: text,
  name: text,
  lineIds: z.array(text),
  goods: figureSchema,
  delivery: figureSchema,
  surcharge: figureSchema,
  tax: figureSchema,
  total: figureSchema,
  orderBy: dateOrNull,
  notes: z.array(text),
}) satisfies z.ZodType<SupplierBasket>;

const choice = z.strictObject({
  total: figureSchema,
  bound: figureSchema,
  proven: z.boolean(),
  lineByLine: figureSchema,
}) satisfies z.ZodType<SupplierChoiceResult>;

const packCount = z.int();
const orderLine = z.strictObject({
  id: text,
  ordered: packCount,
  received: packCount,
  returned: packCount,
  open: packCount,
}) satisfies z.ZodType<OrderLineState>;

const order = z.strictObject({
  id: text,
  supplierId: text,
  supplierName: text,
  date: text,
  state: z.enum(['ordered', 'part-received', 'received', 'empty']),
  expectedOn: dateOrNull,
  overdue: z.boolean(),
  lines: z.array(orderLine),
}) satisfies z.ZodType<OrderState>;

const piece = z.strictObject({
  from: z.enum(['onHand', 'receipts']),
  id: text,
  amount: z.number(),
  place: text,
  batch: text,
  openedOn: text,
  goodUntil: dateOrNull,
  expired: z.boolean(),
}) satisfies z.ZodType<StockPiece>;

const stock = z.strictObject({
  id: text,
  name: text,
  unit,
  leftovers: figureSchema,
  expired: figureSchema,
  received: figureSchema,
  used: figureSchema,
  now: figureSchema,
  pieces: z.array(piece),
}) satisfies z.ZodType<StockItem>;

const coverage = z.strictObject({
  id: text,
  name: text,
  got: figureSchema,
  areaM2: z.number(),
  litres: z.number(),
  coats: z.int(),
  catalogueLow: z.number().nullable(),
  catalogueTypical: z.number().nullable(),
  catalogueHigh: z.number().nullable(),
}) satisfies z.ZodType<GotCoverage>;

export const buyingAnswerSchema = z
  .strictObject({
    revision: z.int(),
    today: date,
    lines: z.array(line),
    baskets: z.array(basket),
    choice,
    orders: z.array(order),
    stock: z.array(stock),
    coverages: z.array(coverage),
    problems: z.array(problemSchema),
  })
  .meta({ id: 'BuyingAnswer' }) satisfies z.ZodType<BuyingAnswer>;

export const supplierMessageSchema = z
  .strictObject({ supplierId: text, subject: text, text })
  .meta({ id: 'SupplierMessage' }) satisfies z.ZodType<SupplierMessage>;
