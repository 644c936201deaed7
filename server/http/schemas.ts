import { z } from 'zod';
import { airSettingShapes } from '../exchange/document/air-setting-schemas.ts';
import { calendarSettingShapes } from '../exchange/document/calendar-setting-schemas.ts';
import { isDate } from '../planning/calendar/is-date.ts';
import type {
  ApplicationMethod,
  CostCategory,
  EdgeName,
  PartInput,
  Payment,
  ProjectSettings,
  Quote,
  Receipt,
  Recipe,
  StepKind,
  UsageRule,
} from '../planning/project-input.ts';
import type { Change, ChangeRequest, ProjectRows, RowTable } from './contract.ts';
import { oneOf } from './one-of.ts';

/**
 * What requests may hold. Strict: an unknown field, a text where a number is due, a fraction where a whole number is
 * due and a number out of its range are refused, with the place named. Cells that people type freely are texts here;
 * reading them is planning's job.
 */

/** Longest text of one cell, characters: a pasted page is kept, a pasted book is refused. */
export const LONGEST_CELL = 10_000;
/** Longest name of a project, characters. */
const LONGEST_NAME = 200;
/** Most steps in one change request: a paste of 20,000 rows. */
export const MOST_CHANGES = 20_000;
/** Largest money amount, minor units: ten thousand million in a currency of cents. */
const LARGEST_MONEY = 1_000_000_000_000;
/** Largest count or amount anywhere; far above any shop's, far below where sums lose whole numbers. */
const LARGEST_AMOUNT = 1_000_000;
/** Largest length given as a number, mm: 100 m, the limit that typed lengths have. */
const LARGEST_LENGTH_MM = 100_000;

export const cell = z.string().max(LONGEST_CELL);
const id = z
  .string()
  .regex(/^\d{1,15}$/, 'must be the number of a row')
  .meta({ description: 'Id of a row: a text of digits.' });
/** An id, or the tempId of a row inserted earlier in the same request. */
export const rowReference = z.string().min(1).max(LONGEST_NAME);
const amount = z.number().min(0).max(LARGEST_AMOUNT);
/** A temperature as typed or pasted, C; whether a shop can have it is planning's question. */
const degrees = z.number().min(-1000).max(1000);
const size = z.number().positive().max(LARGEST_LENGTH_MM);
const money = z.int().min(0).max(LARGEST_MONEY);

/** Most hours in one entry or quote. */
const MOST_HOURS = 100_000;
const percent = z.number().min(0).max(100);
const packCount = z.int().min(0).max(LARGEST_AMOUNT);
const dateText = cell.refine(
  (text) => text === '' || isDate(text),
  'must be a date like 2027-04-01, or empty',
);

const edgeName = oneOf<EdgeName>({ front: true, back: true, left: true, right: true });
export const method = oneOf<ApplicationMethod>({
  brush: true,
  roller: true,
  wipe: true,
  'spray-hvlp': true,
  'spray-airless': true,
  'spray-air': true,
});
export const stepKind = oneOf<StepKind>({
  sand: true,
  dust: true,
  condition: true,
  stain: true,
  seal: true,
  topcoat: true,
  scuff: true,
  cure: true,
});
export const costCategory = oneOf<CostCategory>({
  sheets: true,
  boards: true,
  banding: true,
  finish: true,
  thinner: true,
  abrasives: true,
  glue: true,
  filler: true,
  hardware: true,
  consumables: true,
  other: true,
});

export const projectName = z
  .string()
  .trim()
  .min(1, 'must not be empty')
  .max(LONGEST_NAME)
  .meta({ description: 'What the project is called.' });
export const units = oneOf<ProjectSettings['units']>({ metric: true, us: true });
export const currency = z
  .string()
  .regex(/^[A-Z]{3}$/, 'must be a currency code of three capital letters, such as EUR')
  .meta({ description: 'ISO 4217 code.' });

/** The settings of a project, each as it may be given. */
export const settingsShape = {
  name: projectName,
  units,
  inchStyle: oneOf<ProjectSettings['inchStyle']>({ fraction: true, decimal: true }),
  inchDenominator: z.literal([2, 4, 8, 16, 32]),
  currency,
  taxPercent: z.number().min(0).max(100).nullable(),
  coverageChoice: oneOf<ProjectSettings['coverageChoice']>({ low: true, typical: true, high: true }),
  overhangMm: z.number().min(0).max(1000),
  trimAllowanceMm: z.number().min(0).max(100),
  spareStrips: z.int().min(0).max(100),
  bandingOrder: z
    .array(edgeName)
    .length(4, 'must name the four edges')
    .refine((edges) => new Set(edges).size === edges.length, 'must name each edge once'),
  kerfMm: z.number().min(0).max(50),
  sheetTrimMm: z.number().min(0).max(500),
  cutStages: z.union([z.literal(2), z.literal(3)]).nullable(),
  finishLoss: z.number().min(0).max(0.9),
  ...calendarSettingShapes,
  ...airSettingShapes,
  contingencyPercent: z.number().min(0).max(100),
  rateMinorPerHour: money.nullable(),
  readyMadeMinor: money.nullable(),
} satisfies Record<keyof ProjectSettings, z.ZodType>;
export const settingsSchema = z.strictObject(settingsShape).meta({ id: 'ProjectSettings' });

type FieldName<Table extends RowTable> = Exclude<keyof ProjectRows[Table][number], 'id' | 'position'>;

/** The fields of every list, each as it may be given. */
export const rowShapes = {
  parts: {
    name: cell,
    section: cell,
    quantity: cell,
    length: cell,
    width: cell,
    shape: oneOf<PartInput['shape']>({ rectangle: true, round: true }),
    materialId: cell,
    grain: oneOf<PartInput['grain']>({ along: true, across: true, free: true }),
    edgeFront: cell,
    edgeBack: cell,
    edgeLeft: cell,
    edgeRight: cell,
    radiusFrontLeft: cell,
    radiusFrontRight: cell,
    radiusBackLeft: cell,
    radiusBackRight: cell,
    showRecipeId: cell,
    backRecipeId: cell,
    note: cell,
    grainMatch: cell,
  },
  recipes: {
    name: cell,
    faces: oneOf<Recipe['faces']>({ flip: true, points: true }),
  },
  steps: {
    recipeId: rowReference,
    kind: stepKind,
    productId: cell,
    blendId: cell,
    coats: z.int().min(1).max(20),
    method,
    transferEfficiency: z.number().positive().max(1).nullable(),
    thinning: z.number().min(0).max(10),
    thinnerId: cell,
    sessionLossL: z.number().min(0).max(1000).nullable(),
    note: cell,
  },
  blends: { name: cell },
  components: { blendId: rowReference, productId: cell, parts: amount },
  rules: {
    productId: cell,
    per: oneOf<UsageRule['per']>({
      'finish-area': true,
      'coat-area': true,
      'banding-metre': true,
      part: true,
      project: true,
    }),
    rate: amount.nullable(),
  },
  extras: {
    productId: cell,
    name: cell,
    category: costCategory,
    quantity: amount,
    unitPriceMinor: money.nullable(),
    supplierId: cell,
  },
  onHand: {
    productId: cell,
    amount,
    count: z.int().min(0).max(LARGEST_AMOUNT),
    lengthMm: size.nullable(),
    widthMm: size.nullable(),
    place: cell,
    batch: cell,
    openedOn: dateText,
    bestBefore: dateText,
    keptFrom: cell,
  },
  measurements: { productId: cell, thicknessMm: z.number().positive().max(1000) },
  sizes: { name: cell, value: cell, note: cell },
  shopHours: { weekday: z.int().min(0).max(6), from: cell, to: cell },
  daysOff: { date: cell, note: cell },
  climateRows: {
    date: cell,
    time: cell,
    temperatureC: degrees.nullable(),
    humidityPercent: amount.nullable(),
  },
  pins: { taskId: cell, start: cell },
  doneTasks: { taskId: cell, start: cell, end: cell, litres: amount.nullable() },
  arrivals: { productId: cell, date: cell },
  budgets: { category: costCategory, amountMinor: money },
  orders: {
    supplierId: cell,
    date: dateText,
    number: cell,
    deliveryMinor: money,
    surchargeMinor: money,
    taxPercent: percent.nullable(),
    note: cell,
  },
  orderLines: {
    orderId: rowReference,
    productId: cell,
    packId: cell,
    name: cell,
    category: costCategory,
    count: packCount,
    packAmount: z.number().positive().max(LARGEST_AMOUNT),
    unitPriceMinor: money.nullable(),
    invoicedPriceMinor: money.nullable(),
    taxPercent: percent.nullable(),
  },
  receipts: {
    orderLineId: rowReference,
    kind: oneOf<Receipt['kind']>({ received: true, returned: true }),
    date: dateText,
    count: packCount,
    batch: cell,
    place: cell,
  },
  stockUses: { productId: cell, date: dateText, amount, note: cell },
  payments: {
    kind: oneOf<Payment['kind']>({ payment: true, refund: true }),
    date: dateText,
    supplierId: cell,
    orderId: cell,
    category: costCategory,
    amountMinor: money,
    taxMinor: money.nullable(),
    share: z.number().min(0).max(1),
    receiptNumber: cell,
    note: cell,
    attachmentId: cell,
  },
  substitutes: { productId: cell, substituteId: cell },
  workHours: { date: dateText, hours: z.number().min(0).max(MOST_HOURS), note: cell },
  quotes: {
    title: cell,
    customer: cell,
    date: dateText,
    validUntil: dateText,
    materialsMinor: money.nullable(),
    hours: z.number().min(0).max(MOST_HOURS),
    rateMinorPerHour: money.nullable(),
    markupPercent: z.number().min(0).max(1000),
    taxPercent: percent.nullable(),
    note: cell,
    sender: cell,
    shown: oneOf<Quote['shown']>({ price: true, work: true }),
  },
} satisfies { readonly [Table in RowTable]: Readonly<Record<FieldName<Table>, z.ZodType>> };

const tables = Object.keys(rowShapes) as RowTable[];

/** Values of a row: any of its fields. */
export const rowValues = Object.fromEntries(
  tables.map((table) => [table, z.strictObject(partial(rowShapes[table])).meta({ id: `${table}-values` })]),
) as unknown as Readonly<Record<RowTable, z.ZodObject>>;

/** `optional` in the sense that the key may be left out; `undefined` cannot travel in JSON. */
export function partial<Shape extends Readonly<Record<string, z.ZodType>>>(shape: Shape) {
  return Object.fromEntries(
    Object.entries(shape).map(([name, schema]) => [name, z.exactOptional(schema)]),
  ) as unknown as {
    [Name in keyof Shape]: z.ZodExactOptional<Shape[Name]>;
  };
}

export const revision = z
  .int()
  .min(0)
  .meta({ description: 'The revision last seen. When the project has moved on since, the answer is 409.' });

function oneForEachTable<Schema extends z.ZodObject>(make: (table: RowTable) => Schema) {
  return z.discriminatedUnion('table', tables.map(make) as unknown as [Schema, ...Schema[]]);
}

export const changeSchema = z
  .discriminatedUnion('op', [
    oneForEachTable((table) =>
      z.strictObject({
        op: z.literal('insert'),
        table: z.literal(table),
        tempId: z.exactOptional(z.string().min(1).max(LONGEST_NAME)),
        before: z.exactOptional(rowReference.nullable()),
        values: rowValues[table],
      }),
    ),
    oneForEachTable((table) =>
      z.strictObject({
        op: z.literal('update'),
        table: z.literal(table),
        id: rowReference,
        values: rowValues[table],
      }),
    ),
    z.strictObject({
      op: z.literal('move'),
      table: z.enum(tables),
      id: rowReference,
      before: rowReference.nullable(),
    }),
    z.strictObject({ op: z.literal('delete'), table: z.enum(tables), id: rowReference }),
    z.strictObject({ op: z.literal('settings'), values: z.strictObject(partial(settingsShape)) }),
  ])
  .meta({ id: 'Change' }) as unknown as z.ZodType<Change>;

export const changeRequestSchema: z.ZodType<ChangeRequest> = z
  .strictObject({
    revision,
    label: z.exactOptional(z.string().trim().min(1).max(LONGEST_NAME)),
    changes: z.array(changeSchema).min(1).max(MOST_CHANGES),
  })
  .meta({ id: 'ChangeRequest' });

export const projectParams = z.strictObject({ id });
export const rowParams = z.strictObject({ id, rowId: id });
export const revisionBody = z.strictObject({ revision });
