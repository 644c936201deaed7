import type { CutNode, MaterialPlan, Plan, StockLayout } from '../../../planning/plan-output.ts';
import type { ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';
import { nameBook } from '../name-book.ts';

type Piece = Exclude<CutNode, { readonly type: 'split' }>;
interface Row {
  readonly material: MaterialPlan;
  readonly layout: StockLayout;
  readonly piece: Piece;
}

/** Every piece of every sheet layout, in the order of sawing, with what is left over. Equal sheets are counted. */
export function sheetPiecesTable(input: ProjectInput, plan: Plan): ExportTable {
  const { text, count, length } = columnMakers(input.settings);
  const names = nameBook(input);
  const partNames = new Map(input.parts.map(({ id, name }) => [id, name]));
  const rows = plan.materials.flatMap((material) =>
    material.layouts.flatMap((layout) =>
      piecesOf(layout.cut).map((piece): Row => ({ material, layout, piece })),
    ),
  );
  return exportTable<Row>(
    'sheet-pieces',
    'Sheet pieces',
    [
      text('Material', 28, ({ material }) => names.productFull(material.id)),
      text('Layout', 8, ({ layout }) => layout.id),
      count('Equal sheets', ({ layout }) => layout.count),
      text('Cut from', 18, ({ layout }) => layout.label),
      text('From', 10, ({ layout }) => (layout.onHandId === null ? 'to buy' : 'on hand')),
      length('Sheet length', ({ layout }) => layout.lengthMm),
      length('Sheet width', ({ layout }) => layout.widthMm),
      text('Piece', 28, ({ piece }) =>
        piece.type === 'part' ? (partNames.get(piece.partId) ?? '') : 'left over',
      ),
      length('Along the sheet', ({ piece }) => piece.lengthMm),
      length('Across the sheet', ({ piece }) => piece.widthMm),
      text('Turned', 8, ({ piece }) => (piece.type === 'part' && piece.turned ? 'turned' : '')),
    ],
    rows,
  );
}

function piecesOf(node: CutNode): Piece[] {
  return node.type === 'split' ? node.children.flatMap(piecesOf) : [node];
}
