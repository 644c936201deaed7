import type { PartPlan, Plan } from '../../../planning/plan-output.ts';
import type { PartInput, ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';
import { nameBook } from '../name-book.ts';

interface Row {
  readonly part: PartInput;
  readonly plan: PartPlan | undefined;
}

/** What the saw has to cut: the parts by material, longest first, with the sizes before banding. */
export function cutListTable(input: ProjectInput, plan: Plan): ExportTable {
  const { text, count, length } = columnMakers(input.settings);
  const names = nameBook(input);
  const plans = new Map(plan.parts.map((part) => [part.id, part]));
  const materials = [...new Set(input.parts.map(({ materialId }) => materialId))];
  const rows = input.parts
    .map((part): Row => ({ part, plan: plans.get(part.id) }))
    .toSorted(
      (one, other) =>
        materials.indexOf(one.part.materialId) - materials.indexOf(other.part.materialId) ||
        (other.plan?.cutLengthMm.value ?? 0) - (one.plan?.cutLengthMm.value ?? 0),
    );
  return exportTable<Row>(
    'cut-list',
    'Cut list',
    [
      text('Material', 28, ({ part }) => names.productFull(part.materialId)),
      length('Thickness', ({ plan }) => plan?.thicknessMm.value),
      text('Part', 28, ({ part }) => part.name),
      text('Section', 18, ({ part }) => part.section),
      count('Pieces', ({ plan }) => plan?.quantity.value),
      length('Cut length', ({ plan }) => plan?.cutLengthMm.value),
      length('Cut width', ({ plan }) => plan?.cutWidthMm.value),
      text('Grain', 9, ({ part }) => part.grain),
      length('Finished length', ({ plan }) => plan?.lengthMm.value),
      length('Finished width', ({ plan }) => plan?.widthMm.value),
      text('Note', 30, ({ part }) => part.note),
    ],
    rows,
  );
}
