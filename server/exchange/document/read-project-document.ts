import type { Problem } from '../../planning/problem.ts';
import type { Catalogue } from '../../planning/product.ts';
import type { PartInput, ProjectInput, UnitSystem } from '../../planning/project-input.ts';
import { defaultSettings } from '../default-settings.ts';
import { documentSchema } from '../document-schema.ts';
import { mergeCatalogue } from './merge-catalogue.ts';
import { type NumberedDocument, numberDocument } from './number-document.ts';
import { defaultMethod } from './row-defaults.ts';
import { schemaProblems } from './schema-problems.ts';
import { strayRows } from './stray-rows.ts';

export type ProjectDocumentReading =
  | { readonly ok: true; readonly input: ProjectInput }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * What project does a document hold?
 *
 * `json`: a parsed JSON value, of any shape. `catalogue`: the products it may refer to; its own come beside them, or
 * in place of those with the same id. Result: the planner's input, with every default filled in, or all the problems
 * that keep the document from being read. What is well formed but makes no sense (an unreadable size, a recipe or
 * product that is not there) is let through, for the plan to report in its place.
 */
export function readProjectDocument(json: unknown, catalogue: Catalogue): ProjectDocumentReading {
  const read = documentSchema.safeParse(json);
  if (!read.success) return { ok: false, problems: schemaProblems(read.error.issues, json) };

  const { settings, products, suppliers } = read.data;
  const { rows, problems: idProblems } = numberDocument(read.data);
  const merged = mergeCatalogue(catalogue, { products, suppliers });
  const problems = [...idProblems, ...strayRows(rows), ...merged.problems];
  if (problems.length > 0) return { ok: false, problems };

  return {
    ok: true,
    input: {
      ...rows,
      settings: { ...defaultSettings(settings.units, settings.currency), ...settings },
      sizes: rows.sizes.map((row) => ({ ...row, value: sizeText(row.value, settings.units) })),
      parts: rows.parts.map((row) => partOf(row, settings.units)),
      recipes: rows.recipes.map((recipe) => ({
        ...recipe,
        steps: recipe.steps.map((step) => ({
          ...step,
          blendId: String(step.blendId),
          method: step.method ?? defaultMethod(step.kind),
        })),
      })),
      orderLines: rows.orderLines.map((row) => ({ ...row, orderId: String(row.orderId) })),
      receipts: rows.receipts.map((row) => ({ ...row, orderLineId: String(row.orderLineId) })),
      payments: rows.payments.map((row) => ({ ...row, orderId: String(row.orderId) })),
      catalogue: merged.catalogue,
    },
  };
}

function partOf(row: NumberedDocument['parts'][number], units: UnitSystem): PartInput {
  return {
    ...row,
    quantity: String(row.quantity),
    length: sizeText(row.length, units),
    width: sizeText(row.width, units),
    radiusFrontLeft: sizeText(row.radiusFrontLeft, units),
    radiusFrontRight: sizeText(row.radiusFrontRight, units),
    radiusBackLeft: sizeText(row.radiusBackLeft, units),
    radiusBackRight: sizeText(row.radiusBackRight, units),
    showRecipeId: String(row.showRecipeId),
    backRecipeId: String(row.backRecipeId),
  };
}

/** A number means the project's unit; it is made self-contained, so that a later change of units cannot change it. */
function sizeText(given: string | number, units: UnitSystem): string {
  if (typeof given === 'string') return given;
  return units === 'metric' ? `${given} mm` : `${given}"`;
}
