import { readCatalogue } from '../../../db/catalogue/read-catalogue.ts';
import type { Catalogue } from '../../planning/product.ts';
import type { ProjectInput } from '../../planning/project-input.ts';
import { DOCUMENT_FORMAT, DOCUMENT_VERSION, type ProjectDocument } from '../document-schema.ts';
import { ownRows } from './own-rows.ts';
import {
  BLEND_DEFAULTS,
  defaultMethod,
  EXTRA_DEFAULTS,
  ON_HAND_DEFAULTS,
  PART_DEFAULTS,
  RECIPE_DEFAULTS,
  RULE_DEFAULTS,
  SIZE_DEFAULTS,
  STEP_DEFAULTS,
} from './row-defaults.ts';

/**
 * A project as a document. Settings are written in full and ids are kept; fields of rows that equal their default are
 * left out, and so are empty lists. Products and suppliers go along as `ownRows` says. Reading the document with
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
    onHand: input.onHand.map((row) => without(ON_HAND_DEFAULTS, row)),
    measurements: input.measurements,
    ...ownRows(input, shipped),
  };
  const document = {
    format: DOCUMENT_FORMAT,
    version: DOCUMENT_VERSION,
    settings: input.settings,
    ...Object.fromEntries(
      Object.entries(lists).filter(([name, rows]) => name === 'parts' || rows.length > 0),
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
