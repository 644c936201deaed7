import type { PartPlanView, PartRow } from '../../../server/http/contract.ts';
import { formatArea } from '../../../server/planning/display/format-area.ts';
import { formatCount } from '../../../server/planning/display/format-count.ts';
import { formatMetres } from '../../../server/planning/display/format-metres.ts';
import type { PlanTotals } from '../../../server/planning/plan-output.ts';
import type { CellView, Choice, SheetColumn } from '../../grid/grid-column.ts';
import { cellLength } from './cell-length.ts';
import { BARE_EDGE, HIDDEN_EDGE, type PartBook } from './part-book.ts';
import type { PartSheetRow } from './part-sheet-row.ts';
import { productSwatch } from './product-swatch.ts';

/** The part list's columns, in the order they stand. `id` is the part's field, as problems and changes name it. */

export type PartField = Exclude<keyof PartRow, 'id' | 'position'>;
type PartColumn = SheetColumn<PartSheetRow>;

export const GRAIN_CHOICES: readonly Choice[] = [
  { value: 'along', text: 'along', hint: 'grain runs with the length' },
  { value: 'across', text: 'across', hint: 'grain runs with the width' },
  { value: 'free', text: 'free', hint: 'may be turned to save material' },
];
export const SHAPE_CHOICES: readonly Choice[] = [
  { value: 'rectangle', text: 'rectangle' },
  { value: 'round', text: 'round', hint: 'length and width are the diameter' },
];
export const CORNER_FIELDS = [
  'radiusFrontLeft',
  'radiusFrontRight',
  'radiusBackLeft',
  'radiusBackRight',
] as const;

/** The columns; `book` gives the choices as they are when an editor opens. */
export function partColumns(book: () => PartBook): readonly PartColumn[] {
  const withUnit = (name: string) => (): string =>
    book().settings.units === 'metric' ? `${name}, mm` : name;
  const edge = (field: PartField, header: string): PartColumn =>
    choice(field, header, `${header} edge`, 116, () => book().edgeChoices, edgeView, {
      group: 'Edges',
      cleared: HIDDEN_EDGE,
    });
  const corner = (
    field: (typeof CORNER_FIELDS)[number],
    header: PartColumn['header'],
    describe: string,
  ): PartColumn => ({
    ...length(field, header, describe, 84, (plan) => plan.cornersMm[CORNER_FIELDS.indexOf(field)] ?? null),
    group: 'Corner radii',
    hidden: true,
  });
  const finish = (field: PartField, header: PartColumn['header'], describe: string): PartColumn =>
    choice(field, header, describe, 116, () => book().recipeChoices, recipeView, { group: 'Finish' });
  return [
    {
      id: 'number',
      header: '#',
      describe: 'row number',
      width: 44,
      narrow: 'hidden',
      pinned: true,
      numeric: true,
      kind: 'ordinal',
      view: (row) => ({ text: row.kind === 'totals' || row.kind === 'blank' ? '' : String(row.number) }),
      raw: () => '',
    },
    { ...text('name', 'Part', 'part name', 156), narrow: 116, pinned: true, view: nameView },
    text('section', 'Section', 'section, a grouping of your own', 100),
    { ...text('quantity', 'Qty', 'quantity', 54), numeric: true, view: quantityView },
    length('length', withUnit('Length'), 'finished length, along the grain', 96, (plan) => plan.lengthMm),
    length('width', withUnit('Width'), 'finished width', 92, (plan) => plan.widthMm),
    choice('materialId', 'Material', 'material', 112, () => book().materialChoices, productView, {}),
    choice('grain', 'Grain', 'grain direction', 70, () => GRAIN_CHOICES, plainView, { cleared: 'along' }),
    edge('edgeFront', 'Front'),
    edge('edgeBack', 'Back'),
    edge('edgeLeft', 'Left'),
    edge('edgeRight', 'Right'),
    corner('radiusFrontLeft', 'Front left', 'radius of the front left corner'),
    corner('radiusFrontRight', 'Front right', 'radius of the front right corner'),
    corner('radiusBackLeft', 'Back left', 'radius of the back left corner'),
    corner('radiusBackRight', 'Back right', 'radius of the back right corner'),
    choice('shape', 'Shape', 'shape', 92, () => SHAPE_CHOICES, plainView, { cleared: 'rectangle' }),
    finish('showRecipeId', 'Show face', 'finish of the show face'),
    finish('backRecipeId', 'Back face', 'finish of the back face'),
    computed('cutLengthMm', withUnit('Cut length'), 'cut length, worked out', 112, (value, row) =>
      cellLength(value, row.book.settings),
    ),
    computed('cutWidthMm', withUnit('Cut width'), 'cut width, worked out', 108, (value, row) =>
      cellLength(value, row.book.settings),
    ),
    computed(
      'totalBandedM',
      'Banded',
      'banded edge of all pieces, worked out',
      88,
      (value, row) => formatMetres(value, row.book.settings),
      'bandedM',
    ),
    computed(
      'totalFinishM2',
      'Finish',
      'finished area of all pieces, worked out',
      88,
      (value, row) => formatArea(value, row.book.settings),
      'finishM2',
    ),
    text('note', 'Note', 'note', 220),
  ];
}

function text(field: PartField, header: PartColumn['header'], describe: string, width: number): PartColumn {
  return {
    id: field,
    header,
    describe,
    width,
    kind: 'typed',
    raw: (row) => rawText(row, field),
    view: (row) => typed(row, field, rawText(row, field)),
  };
}

/** Lengths show in the project's unit; an expression or a text that is not understood is edited and shown as typed. */
function length(
  field: PartField,
  header: PartColumn['header'],
  describe: string,
  width: number,
  mm: (plan: PartPlanView) => number | null,
): PartColumn {
  const shown = (row: PartSheetRow): string | null => {
    // An empty or unreadable radius counts as square in the plan, but is not a zero that was typed.
    const understood = rawText(row, field) !== '' && row.problems.get(field)?.severity !== 'error';
    const value = row.plan === null || !understood ? null : mm(row.plan);
    return value === null ? null : cellLength(value, row.book.settings);
  };
  const asTyped = (row: PartSheetRow): string => {
    const raw = rawText(row, field);
    const nice = shown(row);
    // A rounded reading is no substitute for what was typed.
    return nice === null || raw.startsWith('=') || nice.startsWith('≈') ? raw : nice;
  };
  return {
    ...text(field, header, describe, width),
    numeric: true,
    editText: asTyped,
    copyText: asTyped,
    view: (row) => {
      const nice = row.waiting[field] === undefined ? shown(row) : null;
      if (nice !== null) return typed(row, field, nice);
      const view = typed(row, field, rawText(row, field));
      return view.severity === 'error' && view.tone === undefined ? { ...view, tone: 'raw' } : view;
    },
  };
}

function choice(
  field: PartField,
  header: PartColumn['header'],
  describe: string,
  width: number,
  choices: () => readonly Choice[],
  view: (row: PartSheetRow, value: string) => CellView,
  extra: Pick<PartColumn, 'group' | 'cleared'>,
): PartColumn {
  return {
    ...text(field, header, describe, width),
    ...extra,
    choices,
    view: (row) => typed(row, field, '', view(row, rawText(row, field))),
  };
}

function computed(
  field: 'cutLengthMm' | 'cutWidthMm' | 'totalBandedM' | 'totalFinishM2',
  header: PartColumn['header'],
  describe: string,
  width: number,
  format: (value: number, row: PartSheetRow) => string,
  total?: keyof PlanTotals,
): PartColumn {
  return {
    id: field,
    header,
    describe,
    group: 'Worked out',
    width,
    numeric: true,
    kind: 'computed',
    raw: (row) => (row.plan?.[field] == null ? '' : format(row.plan[field], row)),
    view: (row) => {
      if (row.totals !== null)
        return total === undefined ? { text: '' } : figure(`totals/${total}`, row.totals[total], row, format);
      return row.plan === null
        ? { text: '' }
        : figure(`parts/${row.plan.id}/${field}`, row.plan[field], row, format);
    },
  };
}

function figure(
  at: string,
  value: number | null,
  row: PartSheetRow,
  format: (value: number, row: PartSheetRow) => string,
): CellView {
  return { text: value === null ? 'unknown' : format(value, row), figureAt: at };
}

/** What the row holds in a field, as text. */
export function rawText(row: PartSheetRow, field: PartField): string {
  return row.waiting[field] ?? row.part?.[field] ?? '';
}

/** A typed cell with the mark and message of its problem, or the text still on its way. */
function typed(
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

function nameView(row: PartSheetRow): CellView {
  if (row.kind === 'totals') return { text: 'Total' };
  if (row.kind === 'blank') return { text: 'Add a part', tone: 'prompt' };
  return typed(row, 'name', rawText(row, 'name'));
}

function quantityView(row: PartSheetRow): CellView {
  if (row.totals !== null) return figure('totals/pieces', row.totals.pieces, row, formatCount);
  return typed(row, 'quantity', rawText(row, 'quantity'));
}

function productView(row: PartSheetRow, id: string): CellView {
  if (id === '') return { text: '' };
  const product = row.book.products.get(id);
  return product === undefined ? { text: id, tone: 'raw' } : { text: product.shortName, title: product.name };
}

function edgeView(row: PartSheetRow, id: string): CellView {
  if (id === '') return { text: '' };
  if (id === HIDDEN_EDGE) return { text: 'hidden', tone: 'absent' };
  if (id === BARE_EDGE) return { text: 'bare', tone: 'quiet' };
  const product = row.book.products.get(id);
  return product === undefined
    ? { text: id, tone: 'raw' }
    : { text: product.shortName, title: product.name, swatch: productSwatch(product) };
}

function recipeView(row: PartSheetRow, id: string): CellView {
  if (id === '') return { text: '' };
  return { text: row.book.recipes.get(id)?.name ?? id };
}

function plainView(_row: PartSheetRow, value: string): CellView {
  return { text: value };
}
