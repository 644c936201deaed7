import type {
  ApplicationMethod,
  Blend,
  ClimateRow,
  DayOff,
  DoneTask,
  ExtraLine,
  NamedSize,
  OnHand,
  Order,
  OrderLine,
  PartInput,
  Payment,
  Quote,
  Receipt,
  Recipe,
  RecipeStep,
  StepKind,
  StockUse,
  UsageRule,
  WorkHours,
} from '../../planning/project-input.ts';

/**
 * What a field of a row is when a document leaves it out. They are part of the format: a document written under
 * version 1 leaves out what equals these, so they may not change without a new version.
 */

type Without<Row, Keys extends keyof Row> = Readonly<Omit<Row, 'id' | Keys>>;

export const SIZE_DEFAULTS: Without<NamedSize, 'name' | 'value'> = { note: '' };

export const PART_DEFAULTS: Without<PartInput, never> = {
  name: '',
  section: '',
  quantity: '1',
  length: '',
  width: '',
  shape: 'rectangle',
  materialId: '',
  grain: 'along',
  edgeFront: 'hidden',
  edgeBack: 'hidden',
  edgeLeft: 'hidden',
  edgeRight: 'hidden',
  radiusFrontLeft: '',
  radiusFrontRight: '',
  radiusBackLeft: '',
  radiusBackRight: '',
  showRecipeId: '',
  backRecipeId: '',
  note: '',
  grainMatch: '',
};

export const RECIPE_DEFAULTS: Without<Recipe, 'steps'> = { name: '', faces: 'flip' };

export const STEP_DEFAULTS: Without<RecipeStep, 'kind' | 'method'> = {
  productId: '',
  blendId: '',
  coats: 1,
  transferEfficiency: null,
  thinning: 0,
  thinnerId: '',
  sessionLossL: null,
  note: '',
};

/** Conditioner and stain are wiped, everything else is brushed, unless the step says otherwise. */
export function defaultMethod(kind: StepKind): ApplicationMethod {
  return kind === 'condition' || kind === 'stain' ? 'wipe' : 'brush';
}

export const BLEND_DEFAULTS: Without<Blend, 'components'> = { name: '' };

export const RULE_DEFAULTS: Without<UsageRule, 'productId' | 'per'> = { rate: null };

export const EXTRA_DEFAULTS: Without<ExtraLine, 'quantity'> = {
  productId: '',
  name: '',
  category: 'other',
  unitPriceMinor: null,
  supplierId: '',
};

export const ON_HAND_DEFAULTS: Required<Without<OnHand, 'productId' | 'amount' | 'keptFrom'>> = {
  count: 1,
  lengthMm: null,
  widthMm: null,
  place: '',
  batch: '',
  openedOn: '',
  bestBefore: '',
};

export const ORDER_DEFAULTS: Without<Order, never> = {
  supplierId: '',
  date: '',
  number: '',
  deliveryMinor: 0,
  surchargeMinor: 0,
  taxPercent: null,
  note: '',
};

export const ORDER_LINE_DEFAULTS: Without<OrderLine, 'orderId'> = {
  productId: '',
  packId: '',
  name: '',
  category: 'other',
  count: 1,
  packAmount: 1,
  unitPriceMinor: null,
  invoicedPriceMinor: null,
  taxPercent: null,
};

export const RECEIPT_DEFAULTS: Without<Receipt, 'orderLineId'> = {
  kind: 'received',
  date: '',
  count: 1,
  batch: '',
  place: '',
};

export const STOCK_USE_DEFAULTS: Without<StockUse, 'productId' | 'amount'> = { date: '', note: '' };

export const PAYMENT_DEFAULTS: Without<Payment, 'amountMinor'> = {
  kind: 'payment',
  date: '',
  supplierId: '',
  orderId: '',
  category: 'other',
  taxMinor: null,
  share: 1,
  receiptNumber: '',
  note: '',
  attachmentId: '',
};

export const WORK_HOURS_DEFAULTS: Without<WorkHours, 'hours'> = { date: '', note: '' };

export const QUOTE_DEFAULTS: Without<Quote, never> = {
  title: '',
  customer: '',
  date: '',
  validUntil: '',
  materialsMinor: null,
  hours: 0,
  rateMinorPerHour: null,
  markupPercent: 0,
  taxPercent: null,
  note: '',
  sender: '',
  shown: 'price',
};

export const DAY_OFF_DEFAULTS: Without<DayOff, 'date'> = { note: '' };

export const CLIMATE_DEFAULTS: Without<ClimateRow, 'date'> = {
  time: '',
  temperatureC: null,
  humidityPercent: null,
};

export const DONE_DEFAULTS: Without<DoneTask, 'taskId' | 'start' | 'end'> = { litres: null };
