import { cutOrder, type FreedPiece, type SawCut } from '../../../planning/cutting/cut-order.ts';
import type { MaterialPlan, Plan, StockLayout } from '../../../planning/plan-output.ts';
import type { ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';
import { nameBook } from '../name-book.ts';

interface Row {
  readonly material: MaterialPlan;
  readonly layout: StockLayout;
  readonly cut: SawCut;
}

/** Every saw cut in its order: what lies on the saw, what the fence is set to, and what is free afterwards. */
export function sawCutsTable(input: ProjectInput, plan: Plan): ExportTable {
  const { text, count, length } = columnMakers(input.settings);
  const names = nameBook(input);
  const partNames = new Map(input.parts.map(({ id, name }) => [id, name]));
  const freed = (piece: FreedPiece): string => {
    if (piece.type === 'part') return partNames.get(piece.partId) || `part ${piece.partId}`;
    return piece.type === 'strip' ? `strip ${piece.strip}` : 'left over';
  };
  const rows = plan.materials.flatMap((material) =>
    material.layouts.flatMap((layout) =>
      cutOrder(layout, input.settings.kerfMm).map((cut): Row => ({ material, layout, cut })),
    ),
  );
  return exportTable<Row>(
    'saw-cuts',
    'Saw cuts',
    [
      text('Material', 28, ({ material }) => names.productFull(material.id)),
      text('Layout', 8, ({ layout }) => layout.id),
      count('Equal sheets', ({ layout }) => layout.count),
      count('Cut', ({ cut }) => cut.number),
      text('Kind', 10, ({ cut }) => cut.kind),
      text('On the saw', 12, ({ cut }) => (cut.strip === null ? 'sheet' : `strip ${cut.strip}`)),
      length('Set to', ({ cut }) => cut.settingMm),
      length('Length of cut', ({ cut }) => cut.toMm - cut.fromMm),
      text('Frees', 34, ({ cut }) => cut.frees.map(freed).join(', ')),
    ],
    rows,
  );
}
