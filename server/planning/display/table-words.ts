import type { ProblemTable } from '../problem.ts';

/** What one row of each table is called within a sentence. */
export const TABLE_WORDS = {
  parts: 'part',
  recipes: 'finish',
  steps: 'finish step',
  blends: 'blend',
  components: 'blend component',
  rules: 'usage rule',
  extras: 'extra line',
  onHand: 'on hand',
  measurements: 'measured thickness',
  sizes: 'named size',
  shopHours: 'working window',
  daysOff: 'day off',
  climateRows: 'climate row',
  pins: 'pinned task',
  doneTasks: 'done task',
  arrivals: 'arrival',
  budgets: 'budget',
  orders: 'order',
  orderLines: 'order line',
  receipts: 'delivery',
  stockUses: 'stock use',
  payments: 'payment',
  substitutes: 'substitute',
  workHours: 'hours',
  quotes: 'quote',
  suppliers: 'supplier',
  settings: 'settings',
  products: 'catalogue',
  document: 'project',
} as const satisfies Readonly<Record<ProblemTable, string>>;

/**
 * What is a row of a table called at the beginning of a sentence?
 *
 * `table`: any that a problem can name. Result: its words with a capital. Definition.
 * Example: `tableTitle('orderLines')` is "Order line".
 */
export function tableTitle(table: ProblemTable): string {
  const words = TABLE_WORDS[table];
  return words.charAt(0).toUpperCase() + words.slice(1);
}
