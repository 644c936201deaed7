import { formatCount } from '../../../server/planning/display/format-count.ts';
import type { CellView } from '../../grid/grid-column.ts';
import { BARE_EDGE, HIDDEN_EDGE } from './part-book.ts';
import type { PartField, PartSheetRow } from './part-sheet-row.ts';
import { productSwatch } from './product-swatch.ts';

/** How the cells of the part list look. */

/** What the row holds in a field, as text. */
export function rawText(row: PartSheetRow, field: PartField): string {
  return row.waiting[field] ?? row.part?.[field] ?? '';
}

/** A typed cell with the mark and message of its problem, or the text still on its way. */
export function typedView(
  row: PartSheetRow,
  field: PartField,
  shown: string,
  view: CellView = { text: shown },
): CellView {
  if (row.waiting[field] !== undefined)
    return { text: view.text === '' ? row.waiting[field] : view.text, tone: 'waiting' };
  const problem = row.problems.get(field);
  return problem === undefined
    ? view
    : { ...view, severity: problem.severity, message: `${problem.message}\n${problem.wayOut}` };
}

/** A computed number, which opens its working. */
export function figureView(
  at: string,
  value: number | null,
  row: PartSheetRow,
  format: (value: number, row: PartSheetRow) => string,
): CellView {
  return { text: value === null ? 'unknown' : format(value, row), figureAt: at };
}

export function nameView(row: PartSheetRow): CellView {
  if (row.kind === 'totals') return { text: row.totalsOf ?? 'Total' };
  if (row.heading !== undefined)
    return {
      text: row.heading.name,
      title: row.heading.name,
      detail: row.heading.rows,
      open: row.heading.open,
    };
  if (row.kind === 'blank') return { text: 'Add a part', tone: 'prompt' };
  return typedView(row, 'name', rawText(row, 'name'));
}

export function quantityView(row: PartSheetRow): CellView {
  if (row.totals !== null) return figureView('totals/pieces', row.totals.pieces, row, formatCount);
  if (row.heading !== undefined) return groupView(row, 'pieces', formatCount);
  return typedView(row, 'quantity', rawText(row, 'quantity'));
}

/** A figure of a group in its heading. */
export function groupView(
  { heading, ...row }: PartSheetRow,
  field: 'pieces' | 'bandedM' | 'finishM2',
  format: (value: number, row: PartSheetRow) => string,
): CellView {
  if (heading?.sums == null) return { text: '' };
  return figureView(`${heading.at}/${field}`, heading.sums[field], row, format);
}

export function productView(row: PartSheetRow, id: string): CellView {
  if (id === '') return { text: '' };
  const product = row.book.products.get(id);
  return product === undefined ? { text: id, tone: 'raw' } : { text: product.shortName, title: product.name };
}

export function edgeView(row: PartSheetRow, id: string): CellView {
  if (id === '') return { text: '' };
  if (id === HIDDEN_EDGE) return { text: 'hidden', tone: 'absent' };
  if (id === BARE_EDGE) return { text: 'bare', tone: 'quiet' };
  const product = row.book.products.get(id);
  return product === undefined
    ? { text: id, tone: 'raw' }
    : { text: product.shortName, title: product.name, swatch: productSwatch(product) };
}

export function recipeView(row: PartSheetRow, id: string): CellView {
  if (id === '') return { text: '' };
  return { text: row.book.recipes.get(id)?.name ?? id };
}

export function plainView(_row: PartSheetRow, value: string): CellView {
  return { text: value };
}
