import { readCatalogue } from '../../../db/catalogue/read-catalogue.ts';
import type { Catalogue } from '../../planning/product.ts';
import type { ProjectInput } from '../../planning/project-input.ts';
import { DOCUMENT_FORMAT, DOCUMENT_VERSION, type ProjectDocument } from '../document-schema.ts';
import { ownRows } from './own-rows.ts';
import {
  BLEND_DEFAULTS,
  CLIMATE_DEFAULTS,
  DAY_OFF_DEFAULTS,
  DONE_DEFAULTS,
  defaultMethod,
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

/** Lists that, left out, would not be read as empty. */
const ALWAYS_WRITTEN: ReadonlySet<string> = new Set(['parts', 'shopHours']);

/**
 * A project as a document. Settings are written in full and ids are kept; fields of rows that equal their default are
 * left out, and so are empty lists where that says the same. Products and suppliers go along as `ownRows` says. Reading the document with
 * `shipped` gives the same rows and settings again, and the same plan.
 */
export function writeProjectDocument(
  input: ProjectInput,
  shipped: Catalogue = readCatalogue(),
): ProjectDocument {
  const lists = {
    sizes: input.sizes.map((row) => without(SIZE_DEFAULTS, row)),
    parts: input.parts.map((row) => without(PART_DEFAULTS, row)),
    recipes: input.recipes.map(({ steps, ...recipe }) => ({
      ...without(RECIPE_DEFAULTS, recipe),
      steps: steps.map((step) => without({ ...STEP_DEFAULTS, method: defaultMethod(step.kind) }, step)),
    })),
    blends: input.blends.map((blend) => without(BLEND_DEFAULTS, blend)),
    rules: input.rules.map((row) => without(RULE_DEFAULTS, row)),
    extras: input.extras.map((row) => without(EXTRA_DEFAULTS, row)),
    // Which sheet an offcut was cut from is known to its own project only.
    onHand: input.onHand.map(({ keptFrom: _, ...row }) => without(ON_HAND_DEFAULTS, row)),
    measurements: input.measurements,
    shopHours: input.shopHours,
    daysOff: input.daysOff.map((row) => without(DAY_OFF_DEFAULTS, row)),
    climateRows: input.climateRows.map((row) => without(CLIMATE_DEFAULTS, row)),
    pins: input.pins,
    doneTasks: input.doneTasks.map((row) => without(DONE_DEFAULTS, row)),
    arrivals: input.arrivals,
    budgets: input.budgets,
    orders: input.orders.map((row) => without(ORDER_DEFAULTS, row)),
    orderLines: input.orderLines.map((row) => without(ORDER_LINE_DEFAULTS, row)),
    receipts: input.receipts.map((row) => without(RECEIPT_DEFAULTS, row)),
    stockUses: input.stockUses.map((row) => without(STOCK_USE_DEFAULTS, row)),
    payments: input.payments.map((row) => without(PAYMENT_DEFAULTS, row)),
    substitutes: input.substitutes,
    workHours: input.workHours.map((row) => without(WORK_HOURS_DEFAULTS, row)),
    quotes: input.quotes.map((row) => without(QUOTE_DEFAULTS, row)),
    ...ownRows(input, shipped),
  };
  const document = {
    format: DOCUMENT_FORMAT,
    version: DOCUMENT_VERSION,
    settings: input.settings,
    ...Object.fromEntries(
      Object.entries(lists).filter(([name, rows]) => ALWAYS_WRITTEN.has(name) || rows.length > 0),
    ),
  };
  // The rows are narrowed by name here, which the type cannot follow; the tests read every document back.
  return structuredClone(document) as unknown as ProjectDocument;
}

function without<Row extends object>(defaults: Partial<Row>, row: Row): Partial<Row> {
  return Object.fromEntries(
    Object.entries(row).filter(([key, value]) => (defaults as Record<string, unknown>)[key] !== value),
  ) as Partial<Row>;
}
