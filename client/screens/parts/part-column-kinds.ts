import type { PartPlanView } from '../../../server/http/contract.ts';
import type { CellView, Choice, SheetColumn } from '../../grid/grid-column.ts';
import { cellLength } from './cell-length.ts';
import { figureView, groupView, rawText, typedView } from './part-cell-views.ts';
import type { PartField, PartSheetRow } from './part-sheet-row.ts';
import { partTyping } from './part-typing.ts';

/** The kinds of column a part list has: text, length, one of a list, computed. */

export type PartColumn = SheetColumn<PartSheetRow>;

export function text(
  field: PartField,
  header: PartColumn['header'],
  describe: string,
  width: number,
): PartColumn {
  return {
    id: field,
    header,
    describe,
    width,
    kind: 'typed',
    raw: (row) => rawText(row, field),
    view: (row) => typedView(row, field, rawText(row, field)),
    order: (row) => orNull(rawText(row, field)),
  };
}

/** Lengths show in the project's unit; an expression or a text that is not understood is edited and shown as typed. */
export function length(
  field: PartField,
  header: PartColumn['header'],
  describe: string,
  width: number,
  mm: (plan: PartPlanView) => number | null,
): PartColumn {
  const lengthMm = (row: PartSheetRow): number | null => {
    // An empty or unreadable radius counts as square in the plan, but is not a zero that was typed.
    const understood = rawText(row, field) !== '' && row.problems.get(field)?.severity !== 'error';
    return row.plan === null || !understood ? null : mm(row.plan);
  };
  const shown = (row: PartSheetRow): string | null => {
    const value = lengthMm(row);
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
    order: lengthMm,
    typing: partTyping(field === 'length' || field === 'width' ? field : 'radius'),
    editText: asTyped,
    copyText: asTyped,
    view: (row) => {
      const nice = row.waiting[field] === undefined ? shown(row) : null;
      if (nice !== null) return typedView(row, field, nice);
      const view = typedView(row, field, rawText(row, field));
      return view.severity === 'error' && view.tone === undefined ? { ...view, tone: 'raw' } : view;
    },
  };
}

export function choice(
  field: PartField,
  header: PartColumn['header'],
  describe: string,
  width: number,
  choices: () => readonly Choice[],
  view: (row: PartSheetRow, value: string) => CellView,
  extra: Pick<PartColumn, 'group' | 'cleared' | 'fit' | 'filters'>,
): PartColumn {
  return {
    ...text(field, header, describe, width),
    ...extra,
    choices,
    order: (row) => orNull(view(row, rawText(row, field)).text),
    view: (row) => typedView(row, field, '', view(row, rawText(row, field))),
  };
}

export function computed(
  field: 'cutLengthMm' | 'cutWidthMm' | 'totalBandedM' | 'totalFinishM2',
  header: PartColumn['header'],
  describe: string,
  width: number,
  format: (value: number, row: PartSheetRow) => string,
  total?: 'bandedM' | 'finishM2',
): PartColumn {
  return {
    id: field,
    header,
    describe,
    group: 'Worked out',
    width,
    numeric: true,
    kind: 'computed',
    order: (row) => row.plan?.[field] ?? null,
    raw: (row) => (row.plan?.[field] == null ? '' : format(row.plan[field], row)),
    view: (row) => {
      if (row.heading !== undefined)
        return total === undefined ? { text: '' } : groupView(row, total, format);
      if (row.totals !== null)
        return total === undefined
          ? { text: '' }
          : figureView(`totals/${total}`, row.totals[total], row, format);
      return row.plan === null
        ? { text: '' }
        : figureView(`parts/${row.plan.id}/${field}`, row.plan[field], row, format);
    },
  };
}

function orNull(value: string): string | null {
  return value === '' ? null : value;
}
