import type { Scalar } from './change.ts';
import type { ProjectRows, RowTable } from './project-rows.ts';

/**
 * How the rows of a project lie in the database: one layout per list, from which `rows.repository.ts` makes its
 * statements. Names of tables and columns come from here and from nowhere else.
 */

/**
 * - text, real, whole: as they stand; the optional ones may be null
 * - length: text as typed, with its millimetres in a second column; may hold a calculation
 * - count: pieces as typed; may hold a calculation
 * - parent: id of the row this one belongs to and is deleted with
 * - mention: id of a row of another list, or empty; emptied when that row is deleted
 */
export type FieldKind =
  | 'text'
  | 'real'
  | 'optional-real'
  | 'whole'
  | 'optional-whole'
  | 'length'
  | 'count'
  | 'parent'
  | 'mention';

export interface RowField {
  readonly name: string;
  readonly column: string;
  readonly kind: FieldKind;
  /** What the field is called in an undo menu. */
  readonly words: string;
  /** Taken by a new row that does not say; undefined where every row must say. */
  readonly initial: Scalar | undefined;
  /** The list a parent or mention refers to. */
  readonly refersTo: RowTable | null;
}

export interface RowLayout {
  readonly table: RowTable;
  readonly sqlName: string;
  readonly one: string;
  readonly many: string;
  readonly fields: readonly RowField[];
}

type FieldName<Table extends RowTable> = Exclude<keyof ProjectRows[Table][number], 'id' | 'position'> &
  string;
type FieldSpec = readonly [kind: FieldKind, words: string, initial: Scalar | undefined, refersTo?: RowTable];

function layout<Table extends RowTable>(
  table: Table,
  sqlName: string,
  one: string,
  many: string,
  fields: Readonly<Record<FieldName<Table>, FieldSpec>>,
): RowLayout {
  return {
    table,
    sqlName,
    one,
    many,
    fields: Object.entries<FieldSpec>(fields).map(([name, [kind, words, initial, refersTo]]) => ({
      name,
      column: columnName(name),
      kind,
      words,
      initial,
      refersTo: refersTo ?? null,
    })),
  };
}

/** Fields that are called like a word of SQL. */
const COLUMNS_OF_SQL_WORDS: Readonly<Record<string, string>> = {
  from: 'from_time',
  to: 'to_time',
  end: 'end_time',
};

/** camelCase to snake_case, as columns are called. */
export function columnName(field: string): string {
  return COLUMNS_OF_SQL_WORDS[field] ?? field.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

/** The column beside a length's text that holds its millimetres. */
export function millimetreColumn(field: RowField): string {
  return `${field.column}_mm`;
}

export const ROW_LAYOUTS: { readonly [Table in RowTable]: RowLayout } = {
  parts: layout('parts', 'part', 'part', 'parts', {
    name: ['text', 'name', ''],
    section: ['text', 'section', ''],
    quantity: ['count', 'quantity', '1'],
    length: ['length', 'length', ''],
    width: ['length', 'width', ''],
    shape: ['text', 'shape', 'rectangle'],
    materialId: ['text', 'material', ''],
    grain: ['text', 'grain', 'along'],
    edgeFront: ['text', 'front edge', 'hidden'],
    edgeBack: ['text', 'back edge', 'hidden'],
    edgeLeft: ['text', 'left edge', 'hidden'],
    edgeRight: ['text', 'right edge', 'hidden'],
    radiusFrontLeft: ['length', 'front left radius', ''],
    radiusFrontRight: ['length', 'front right radius', ''],
    radiusBackLeft: ['length', 'back left radius', ''],
    radiusBackRight: ['length', 'back right radius', ''],
    showRecipeId: ['mention', 'show face finish', '', 'recipes'],
    backRecipeId: ['mention', 'back face finish', '', 'recipes'],
    note: ['text', 'note', ''],
    grainMatch: ['text', 'grain match', ''],
  }),
  recipes: layout('recipes', 'recipe', 'finish recipe', 'finish recipes', {
    name: ['text', 'name', ''],
    faces: ['text', 'way of coating the two faces', 'flip'],
  }),
  steps: layout('steps', 'recipe_step', 'finish step', 'finish steps', {
    recipeId: ['parent', 'recipe', undefined, 'recipes'],
    kind: ['text', 'kind', 'topcoat'],
    productId: ['text', 'product', ''],
    blendId: ['mention', 'blend', '', 'blends'],
    coats: ['whole', 'coats', 1],
    method: ['text', 'method', 'brush'],
    transferEfficiency: ['optional-real', 'transfer efficiency', null],
    thinning: ['real', 'thinning', 0],
    thinnerId: ['text', 'thinner', ''],
    sessionLossL: ['optional-real', 'loss per session', null],
    note: ['text', 'note', ''],
  }),
  blends: layout('blends', 'blend', 'blend', 'blends', {
    name: ['text', 'name', ''],
  }),
  components: layout('components', 'blend_component', 'blend component', 'blend components', {
    blendId: ['parent', 'blend', undefined, 'blends'],
    productId: ['text', 'product', ''],
    parts: ['real', 'parts by volume', 1],
  }),
  rules: layout('rules', 'usage_rule', 'usage rate', 'usage rates', {
    productId: ['text', 'product', ''],
    per: ['text', 'measure', 'finish-area'],
    rate: ['optional-real', 'rate', null],
  }),
  extras: layout('extras', 'extra_line', 'extra line', 'extra lines', {
    productId: ['text', 'product', ''],
    name: ['text', 'name', ''],
    category: ['text', 'category', 'hardware'],
    quantity: ['real', 'quantity', 1],
    unitPriceMinor: ['optional-whole', 'price', null],
    supplierId: ['text', 'supplier', ''],
  }),
  onHand: layout('onHand', 'on_hand', 'item on hand', 'items on hand', {
    productId: ['text', 'product', ''],
    amount: ['real', 'amount', 1],
    count: ['whole', 'count', 1],
    lengthMm: ['optional-real', 'length', null],
    widthMm: ['optional-real', 'width', null],
    place: ['text', 'place', ''],
    batch: ['text', 'batch', ''],
    openedOn: ['text', 'day of opening', ''],
    bestBefore: ['text', 'best before', ''],
    keptFrom: ['text', 'sheet it was cut from', ''],
  }),
  measurements: layout('measurements', 'measurement', 'measured thickness', 'measured thicknesses', {
    productId: ['text', 'product', ''],
    thicknessMm: ['real', 'thickness', undefined],
  }),
  sizes: layout('sizes', 'named_size', 'named size', 'named sizes', {
    name: ['text', 'name', ''],
    value: ['length', 'value', ''],
    note: ['text', 'note', ''],
  }),
  shopHours: layout('shopHours', 'shop_hours', 'working window', 'working windows', {
    weekday: ['whole', 'weekday', 0],
    from: ['text', 'beginning', ''],
    to: ['text', 'end', ''],
  }),
  daysOff: layout('daysOff', 'day_off', 'day off', 'days off', {
    date: ['text', 'date', ''],
    note: ['text', 'note', ''],
  }),
  climateRows: layout('climateRows', 'climate_row', 'climate row', 'climate rows', {
    date: ['text', 'date', ''],
    time: ['text', 'time', ''],
    temperatureC: ['optional-real', 'temperature', null],
    humidityPercent: ['optional-real', 'humidity', null],
  }),
  pins: layout('pins', 'pinned_task', 'pinned task', 'pinned tasks', {
    taskId: ['text', 'task', ''],
    start: ['text', 'start', ''],
  }),
  doneTasks: layout('doneTasks', 'done_task', 'done task', 'done tasks', {
    taskId: ['text', 'task', ''],
    start: ['text', 'start', ''],
    end: ['text', 'end', ''],
    litres: ['optional-real', 'litres used', null],
  }),
  arrivals: layout('arrivals', 'arrival', 'arrival', 'arrivals', {
    productId: ['text', 'product', ''],
    date: ['text', 'date', ''],
  }),
  budgets: layout('budgets', 'budget', 'budget', 'budgets', {
    category: ['text', 'heading', 'other'],
    amountMinor: ['whole', 'amount', 0],
  }),
  orders: layout('orders', 'purchase_order', 'order', 'orders', {
    supplierId: ['text', 'supplier', ''],
    date: ['text', 'date', ''],
    number: ['text', 'order number', ''],
    deliveryMinor: ['whole', 'delivery charge', 0],
    surchargeMinor: ['whole', 'surcharge', 0],
    taxPercent: ['optional-real', 'tax', null],
    note: ['text', 'note', ''],
  }),
  orderLines: layout('orderLines', 'order_line', 'order line', 'order lines', {
    orderId: ['parent', 'order', undefined, 'orders'],
    productId: ['text', 'product', ''],
    packId: ['text', 'pack', ''],
    name: ['text', 'name', ''],
    category: ['text', 'category', 'other'],
    count: ['whole', 'packs', 1],
    packAmount: ['real', 'amount in a pack', 1],
    unitPriceMinor: ['optional-whole', 'price', null],
    invoicedPriceMinor: ['optional-whole', 'price charged', null],
    taxPercent: ['optional-real', 'tax', null],
  }),
  receipts: layout('receipts', 'receipt', 'delivery', 'deliveries', {
    orderLineId: ['parent', 'order line', undefined, 'orderLines'],
    kind: ['text', 'kind', 'received'],
    date: ['text', 'date', ''],
    count: ['whole', 'packs', 1],
    batch: ['text', 'batch', ''],
    place: ['text', 'place', ''],
  }),
  stockUses: layout('stockUses', 'stock_use', 'stock use', 'stock uses', {
    productId: ['text', 'product', ''],
    date: ['text', 'date', ''],
    amount: ['real', 'amount', 0],
    note: ['text', 'note', ''],
  }),
  payments: layout('payments', 'payment', 'payment', 'payments', {
    kind: ['text', 'kind', 'payment'],
    date: ['text', 'date', ''],
    supplierId: ['text', 'supplier', ''],
    orderId: ['mention', 'order', '', 'orders'],
    category: ['text', 'heading', 'other'],
    amountMinor: ['whole', 'amount', 0],
    taxMinor: ['optional-whole', 'tax', null],
    share: ['real', 'share of this project', 1],
    receiptNumber: ['text', 'receipt number', ''],
    note: ['text', 'note', ''],
    attachmentId: ['text', 'attachment', ''],
  }),
  substitutes: layout('substitutes', 'substitute', 'allowed substitute', 'allowed substitutes', {
    productId: ['text', 'product', ''],
    substituteId: ['text', 'substitute', ''],
  }),
  workHours: layout('workHours', 'work_hours', 'entry of hours', 'entries of hours', {
    date: ['text', 'date', ''],
    hours: ['real', 'hours', 0],
    note: ['text', 'note', ''],
  }),
  quotes: layout('quotes', 'quote', 'quote', 'quotes', {
    title: ['text', 'title', ''],
    customer: ['text', 'customer', ''],
    date: ['text', 'date', ''],
    validUntil: ['text', 'validity', ''],
    materialsMinor: ['optional-whole', 'materials', null],
    hours: ['real', 'hours', 0],
    rateMinorPerHour: ['optional-whole', 'rate', null],
    markupPercent: ['real', 'markup', 0],
    taxPercent: ['optional-real', 'tax', null],
    note: ['text', 'note', ''],
    sender: ['text', 'sender', ''],
    shown: ['text', 'what the customer sees', 'price'],
  }),
};
