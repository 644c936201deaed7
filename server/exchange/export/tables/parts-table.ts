import type { PartPlan, Plan } from '../../../planning/plan-output.ts';
import type { PartInput, ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';
import { nameBook } from '../name-book.ts';

interface Row {
  readonly part: PartInput;
  readonly plan: PartPlan | undefined;
}

/**
 * The part list. Its headings are words the import knows, so that it comes back as the same list; sizes that are sums
 * or could not be read stand at the end as they were typed.
 */
export function partsTable(input: ProjectInput, plan: Plan): ExportTable {
  const { text, count, length } = columnMakers(input.settings);
  const names = nameBook(input);
  const plans = new Map(plan.parts.map((part) => [part.id, part]));
  // A square corner is left empty, as it is typed; a round part has no corners.
  const corner = (heading: string, index: 0 | 1 | 2 | 3) =>
    length<Row>(heading, ({ part, plan }) =>
      part.shape === 'round' ? null : plan?.cornersMm[index] || null,
    );
  return exportTable<Row>(
    'parts',
    'Parts',
    [
      text('Part', 28, ({ part }) => part.name),
      text('Section', 18, ({ part }) => part.section),
      count('Quantity', ({ plan }) => plan?.quantity.value),
      length('Length', ({ plan }) => plan?.lengthMm.value),
      length('Width', ({ plan }) => plan?.widthMm.value),
      length('Thickness', ({ plan }) => plan?.thicknessMm.value),
      text('Material', 18, ({ part }) => names.product(part.materialId)),
      text('Grain', 9, ({ part }) => part.grain),
      text('Front edge', 18, ({ part }) => names.edge(part.edgeFront)),
      text('Back edge', 18, ({ part }) => names.edge(part.edgeBack)),
      text('Left edge', 18, ({ part }) => names.edge(part.edgeLeft)),
      text('Right edge', 18, ({ part }) => names.edge(part.edgeRight)),
      text('Note', 30, ({ part }) => part.note),
      text('Shape', 11, ({ part }) => part.shape),
      corner('Corner front left', 0),
      corner('Corner front right', 1),
      corner('Corner back left', 2),
      corner('Corner back right', 3),
      text('Show face', 18, ({ part }) => names.recipe(part.showRecipeId)),
      text('Back face', 18, ({ part }) => names.recipe(part.backRecipeId)),
      text('Length as typed', 18, ({ part }) => part.length),
      text('Width as typed', 18, ({ part }) => part.width),
    ],
    input.parts.map((part) => ({ part, plan: plans.get(part.id) })),
  );
}
