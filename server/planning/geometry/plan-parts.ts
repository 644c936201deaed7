import { nameKey } from '../dimensions/name-key.ts';
import {
  type CellReading,
  type CellScope,
  readLengthCell,
  readQuantityCell,
} from '../dimensions/read-cell.ts';
import { isPositive } from '../finish/is-positive.ts';
import type { PlanMemory } from '../plan-memory.ts';
import type { PartPlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { Measurement, ProjectInput } from '../project-input.ts';
import { roundMemory } from '../round-memory.ts';
import { bandFacts } from './band-facts.ts';
import { filmCoats } from './film-coats.ts';
import type { PartContext } from './part-context.ts';
import { partSettings } from './part-settings.ts';
import { planPart } from './plan-part.ts';
import { productThickness } from './product-thickness.ts';

/**
 * What does every row of the part list come to?
 *
 * `sizes`: values of the named sizes, mm, under their `nameKey`, as `planSizes` gives them. Result: a plan per row,
 * in their order, and the problems of their cells, of measured thicknesses and of the settings they hang on. No
 * source: the functions called name theirs. `memory` saves planning rows anew that are as they were; the answer is the
 * same without it.
 *
 * Example: a project of no rows has no part plans and no problems.
 */
export function planParts(
  input: ProjectInput,
  sizes: ReadonlyMap<string, number>,
  memory: PlanMemory['parts'] = roundMemory(),
): { readonly parts: readonly PartPlan[]; readonly problems: readonly Problem[] } {
  const { problems: settingProblems, ...settings } = partSettings(input.settings);
  const measured = new Map(input.measurements.map((one) => [one.productId, usableMm(one)]));
  const products = new Map(input.catalogue.products.map((product) => [product.id, product]));
  const scope: CellScope = {
    units: input.settings.units,
    values: sizes,
    // Of two sizes with one name the first counts, as in planSizes: a later entry of a Map would win.
    named: new Map([...input.sizes].reverse().map((row) => [nameKey(row.name), row])),
  };
  const context: PartContext = {
    settings: input.settings,
    products,
    ...settings,
    filmCoats: new Map(input.recipes.map((recipe) => [recipe.id, filmCoats(recipe, products)])),
    readSize: remembered((text): CellReading => readLengthCell(text, scope)),
    readRadius: remembered((text): CellReading => readLengthCell(text, scope, true)),
    readPieces: remembered((text): CellReading => readQuantityCell(text, scope)),
    thicknessOf: remembered((product) => productThickness(product, measured.get(product.id))),
    bandOf: remembered((product) => bandFacts(product, measured.get(product.id))),
  };

  const parts: PartPlan[] = [];
  const problems: Problem[] = [...settingProblems, ...measurementProblems(input.measurements)];
  const planOf = memory.begin(
    [input.settings, input.recipes, input.measurements, input.sizes, [...sizes]],
    [input.catalogue],
  );
  for (const row of input.parts) {
    const planned = planOf(row, () => planPart(row, context));
    parts.push(planned.part);
    problems.push(...planned.problems);
  }
  return { parts, problems };
}

/** The same answer for the same question within one plan: thousands of rows repeat a few hundred texts. */
function remembered<Question, Answer>(
  answer: (question: Question) => Answer,
): (question: Question) => Answer {
  const known = new Map<Question, Answer>();
  return (question) => {
    const found = known.get(question);
    if (found !== undefined) return found;
    const made = answer(question);
    known.set(question, made);
    return made;
  };
}

function usableMm({ thicknessMm }: Measurement): number | null {
  return isPositive(thicknessMm) ? thicknessMm : null;
}

function measurementProblems(measurements: readonly Measurement[]): Problem[] {
  return measurements.flatMap((one): Problem[] =>
    usableMm(one) === null
      ? [
          {
            code: 'dimension-not-positive',
            severity: 'error',
            at: { table: 'measurements', id: one.id, field: 'thicknessMm' },
            message: `A measured thickness of ${one.thicknessMm} mm cannot be used.`,
            wayOut: 'Enter a thickness above zero, or delete the measurement.',
          },
        ]
      : [],
  );
}
