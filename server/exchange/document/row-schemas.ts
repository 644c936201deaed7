import { z } from 'zod';
import type {
  ApplicationMethod,
  CostCategory,
  PartInput,
  Payment,
  Quote,
  Receipt,
  Recipe,
  StepKind,
  UsageRule,
} from '../../planning/project-input.ts';
import {
  BLEND_DEFAULTS,
  CLIMATE_DEFAULTS,
  DONE_DEFAULTS,
  EXTRA_DEFAULTS,
  ON_HAND_DEFAULTS,
  ORDER_DEFAULTS,
  ORDER_LINE_DEFAULTS,
  PART_DEFAULTS,
  PAYMENT_DEFAULTS,
  QUOTE_DEFAULTS,
  RECEIPT_DEFAULTS,
  RECIPE_DEFAULTS,
  RULE_DEFAULTS,
  SIZE_DEFAULTS,
  STEP_DEFAULTS,
  STOCK_USE_DEFAULTS,
  WORK_HOURS_DEFAULTS,
} from './row-defaults.ts';
import { amount, cell, choice, day, measure, money, reference, rowId, sizeMm } from './value-schemas.ts';

/** How each row of a project document may be given. Unknown keys are refused. */

const id = z.exactOptional(rowId);
const note = cell.default('');
const edge = cell
  .default(PART_DEFAULTS.edgeFront)
  .meta({ description: '"hidden" (in a joint), "bare" (seen, not banded) or the id of a banding product.' });
const radius = measure.default(PART_DEFAULTS.radiusFrontLeft);

const costCategory = choice<CostCategory>(
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
);
const percent = z.number().min(0).max(100);
const packCount = z.int().min(0).max(1_000_000);

export const sizeRow = z.strictObject({
  id,
  name: cell.meta({ description: 'Letters, digits and underscores; = cells use it.' }),
  value: measure,
  note: cell.default(SIZE_DEFAULTS.note),
});

export const partRow = z.strictObject({
  id,
  name: cell.default(PART_DEFAULTS.name),
  section: cell.default(PART_DEFAULTS.section),
  quantity: z.union([cell, z.number()]).default(PART_DEFAULTS.quantity),
  length: measure.default(PART_DEFAULTS.length).meta({ description: 'Finished size along the grain.' }),
  width: measure.default(PART_DEFAULTS.width),
  shape: choice<PartInput['shape']>('rectangle', 'round').default(PART_DEFAULTS.shape),
  materialId: cell.default(PART_DEFAULTS.materialId),
  grain: choice<PartInput['grain']>('along', 'across', 'free').default(PART_DEFAULTS.grain),
  edgeFront: edge,
  edgeBack: edge,
  edgeLeft: edge,
  edgeRight: edge,
  radiusFrontLeft: radius,
  radiusFrontRight: radius,
  radiusBackLeft: radius,
  radiusBackRight: radius,
  showRecipeId: reference.default(PART_DEFAULTS.showRecipeId),
  backRecipeId: reference.default(PART_DEFAULTS.backRecipeId),
  note,
  grainMatch: cell.default(PART_DEFAULTS.grainMatch).meta({
    description: 'Parts of one name and material are cut side by side from one sheet, in their order.',
  }),
});

export const stepRow = z.strictObject({
  id,
  kind: choice<StepKind>('sand', 'dust', 'condition', 'stain', 'seal', 'topcoat', 'scuff', 'cure'),
  productId: cell.default(STEP_DEFAULTS.productId),
  blendId: reference.default(STEP_DEFAULTS.blendId),
  coats: z.int().min(1).max(20).default(STEP_DEFAULTS.coats),
  method: z
    .exactOptional(
      choice<ApplicationMethod>('brush', 'roller', 'wipe', 'spray-hvlp', 'spray-airless', 'spray-air'),
    )
    .meta({ description: 'Left out: wipe for condition and stain, else brush.' }),
  transferEfficiency: z.number().positive().max(1).nullable().default(STEP_DEFAULTS.transferEfficiency),
  thinning: z.number().min(0).max(10).default(STEP_DEFAULTS.thinning),
  thinnerId: cell.default(STEP_DEFAULTS.thinnerId),
  sessionLossL: z.number().min(0).max(1000).nullable().default(STEP_DEFAULTS.sessionLossL),
  note,
});

export const recipeRow = z.strictObject({
  id,
  name: cell.default(RECIPE_DEFAULTS.name),
  faces: choice<Recipe['faces']>('flip', 'points').default(RECIPE_DEFAULTS.faces),
  steps: z.array(stepRow).default([]),
});

export const componentRow = z.strictObject({ id, productId: cell, parts: amount });

export const blendRow = z.strictObject({
  id,
  name: cell.default(BLEND_DEFAULTS.name),
  components: z.array(componentRow).default([]),
});

export const ruleRow = z.strictObject({
  id,
  productId: cell,
  per: choice<UsageRule['per']>('finish-area', 'coat-area', 'banding-metre', 'part', 'project'),
  rate: amount.nullable().default(RULE_DEFAULTS.rate),
});

export const extraRow = z.strictObject({
  id,
  productId: cell.default(EXTRA_DEFAULTS.productId),
  name: cell.default(EXTRA_DEFAULTS.name),
  category: costCategory.default(EXTRA_DEFAULTS.category),
  quantity: amount,
  unitPriceMinor: money.nullable().default(EXTRA_DEFAULTS.unitPriceMinor),
  supplierId: cell.default(EXTRA_DEFAULTS.supplierId),
});

export const onHandRow = z.strictObject({
  id,
  productId: cell,
  amount,
  count: z.int().min(0).max(1_000_000).default(ON_HAND_DEFAULTS.count),
  lengthMm: sizeMm.nullable().default(ON_HAND_DEFAULTS.lengthMm),
  widthMm: sizeMm.nullable().default(ON_HAND_DEFAULTS.widthMm),
  place: cell.default(ON_HAND_DEFAULTS.place),
  batch: cell.default(ON_HAND_DEFAULTS.batch),
  openedOn: day.default(ON_HAND_DEFAULTS.openedOn),
  bestBefore: day.default(ON_HAND_DEFAULTS.bestBefore),
});

export const measurementRow = z.strictObject({
  id,
  productId: cell,
  thicknessMm: z.number().positive().max(1000),
});

export const shopHoursRow = z.strictObject({
  id,
  weekday: z.int().min(0).max(6).meta({ description: '0 is Monday, 6 is Sunday.' }),
  from: cell,
  to: cell,
});

export const dayOffRow = z.strictObject({ id, date: cell, note });

export const climateRow = z.strictObject({
  id,
  date: cell,
  time: cell.default(CLIMATE_DEFAULTS.time).meta({ description: 'Left out: the whole day.' }),
  temperatureC: z.number().min(-1000).max(1000).nullable().default(CLIMATE_DEFAULTS.temperatureC),
  humidityPercent: amount.nullable().default(CLIMATE_DEFAULTS.humidityPercent),
});

export const pinRow = z.strictObject({ id, taskId: cell, start: cell });

export const doneTaskRow = z.strictObject({
  id,
  taskId: cell,
  start: cell,
  end: cell,
  litres: amount.nullable().default(DONE_DEFAULTS.litres),
});

export const arrivalRow = z.strictObject({ id, productId: cell, date: cell });

export const budgetRow = z.strictObject({ id, category: costCategory, amountMinor: money });

export const orderRow = z.strictObject({
  id,
  supplierId: cell.default(ORDER_DEFAULTS.supplierId),
  date: day.default(ORDER_DEFAULTS.date).meta({ description: 'YYYY-MM-DD.' }),
  number: cell.default(ORDER_DEFAULTS.number),
  deliveryMinor: money.default(ORDER_DEFAULTS.deliveryMinor),
  surchargeMinor: money.default(ORDER_DEFAULTS.surchargeMinor),
  taxPercent: percent.nullable().default(ORDER_DEFAULTS.taxPercent),
  note,
});

export const orderLineRow = z.strictObject({
  id,
  orderId: reference.meta({ description: 'Id of a row of orders.' }),
  productId: cell.default(ORDER_LINE_DEFAULTS.productId),
  packId: cell.default(ORDER_LINE_DEFAULTS.packId),
  name: cell.default(ORDER_LINE_DEFAULTS.name),
  category: costCategory.default(ORDER_LINE_DEFAULTS.category),
  count: packCount.default(ORDER_LINE_DEFAULTS.count),
  packAmount: z.number().positive().max(1_000_000).default(ORDER_LINE_DEFAULTS.packAmount),
  unitPriceMinor: money.nullable().default(ORDER_LINE_DEFAULTS.unitPriceMinor),
  invoicedPriceMinor: money.nullable().default(ORDER_LINE_DEFAULTS.invoicedPriceMinor),
  taxPercent: percent.nullable().default(ORDER_LINE_DEFAULTS.taxPercent),
});

export const receiptRow = z.strictObject({
  id,
  orderLineId: reference.meta({ description: 'Id of a row of orderLines.' }),
  kind: choice<Receipt['kind']>('received', 'returned').default(RECEIPT_DEFAULTS.kind),
  date: day.default(RECEIPT_DEFAULTS.date),
  count: packCount.default(RECEIPT_DEFAULTS.count),
  batch: cell.default(RECEIPT_DEFAULTS.batch),
  place: cell.default(RECEIPT_DEFAULTS.place),
});

export const stockUseRow = z.strictObject({
  id,
  productId: cell,
  date: day.default(STOCK_USE_DEFAULTS.date),
  amount,
  note,
});

export const paymentRow = z.strictObject({
  id,
  kind: choice<Payment['kind']>('payment', 'refund').default(PAYMENT_DEFAULTS.kind),
  date: day.default(PAYMENT_DEFAULTS.date),
  supplierId: cell.default(PAYMENT_DEFAULTS.supplierId),
  orderId: reference.default(PAYMENT_DEFAULTS.orderId),
  category: costCategory.default(PAYMENT_DEFAULTS.category),
  amountMinor: money,
  taxMinor: money.nullable().default(PAYMENT_DEFAULTS.taxMinor),
  share: z.number().min(0).max(1).default(PAYMENT_DEFAULTS.share),
  receiptNumber: cell.default(PAYMENT_DEFAULTS.receiptNumber),
  note,
  attachmentId: cell.default(PAYMENT_DEFAULTS.attachmentId).meta({
    description:
      'SHA-256 of a picture or PDF kept beside the database; the file itself is not in this document.',
  }),
});

export const substituteRow = z.strictObject({ id, productId: cell, substituteId: cell });

export const workHoursRow = z.strictObject({
  id,
  date: day.default(WORK_HOURS_DEFAULTS.date),
  hours: z.number().min(0).max(100_000),
  note,
});

export const quoteRow = z.strictObject({
  id,
  title: cell.default(QUOTE_DEFAULTS.title),
  customer: cell.default(QUOTE_DEFAULTS.customer),
  date: day.default(QUOTE_DEFAULTS.date),
  validUntil: day.default(QUOTE_DEFAULTS.validUntil),
  materialsMinor: money.nullable().default(QUOTE_DEFAULTS.materialsMinor),
  hours: z.number().min(0).max(100_000).default(QUOTE_DEFAULTS.hours),
  rateMinorPerHour: money.nullable().default(QUOTE_DEFAULTS.rateMinorPerHour),
  markupPercent: z.number().min(0).max(1000).default(QUOTE_DEFAULTS.markupPercent),
  taxPercent: percent.nullable().default(QUOTE_DEFAULTS.taxPercent),
  note,
  sender: cell.default(QUOTE_DEFAULTS.sender),
  shown: choice<Quote['shown']>('price', 'work').default(QUOTE_DEFAULTS.shown),
});
