import type { ColDef, ColGroupDef } from 'ag-grid-community';
import { CellRenderer, viewKey } from './cell-renderer.ts';
import { ChoiceEditor } from './choice-editor.ts';
import { type CellView, columnName, isEditable, type SheetColumn, type SheetRow } from './grid-column.ts';
import { HeaderCell, type HeaderExtras } from './header-cell.ts';
import { type EditorExtras, TextEditor } from './text-editor.ts';

/** What the columns' parts ask of the sheet they stand in. */
export interface ColumnActs {
  readonly leaveBy: EditorExtras['leaveBy'];
  readonly giveUp: EditorExtras['giveUp'];
  readonly marks: HeaderExtras['marks'];
  readonly onMarks: HeaderExtras['onMarks'];
  readonly sort: (columnId: string) => void;
  readonly filter: (columnId: string, button: HTMLElement) => void;
}

/** The columns as the grid library wants them; neighbours of one group stand under its heading. */
export function columnDefinitions<Row extends SheetRow>(
  columns: readonly SheetColumn<Row>[],
  acts: ColumnActs,
): (ColDef<Row> | ColGroupDef<Row>)[] {
  const definitions: (ColDef<Row> | ColGroupDef<Row>)[] = [];
  for (const column of columns) {
    const definition = columnDefinition(column, acts);
    const last = definitions.at(-1);
    if (column.group === undefined) definitions.push(definition);
    else if (last !== undefined && 'children' in last && last.headerName === column.group)
      last.children.push(definition);
    else
      definitions.push({
        headerName: column.group,
        headerClass: column.kind === 'computed' ? 'computed-group' : '',
        marryChildren: true,
        children: [definition],
      });
  }
  return definitions;
}

function columnDefinition<Row extends SheetRow>(column: SheetColumn<Row>, acts: ColumnActs): ColDef<Row> {
  const classes = [`kind-${column.kind}`, ...(column.numeric ? ['numeric'] : [])];
  const extras: EditorExtras = {
    sheetColumn: column as unknown as EditorExtras['sheetColumn'],
    leaveBy: acts.leaveBy,
    giveUp: acts.giveUp,
  };
  const header: HeaderExtras = {
    describe: columnName(column),
    sorts: column.order !== undefined,
    filters: column.filters === true,
    marks: acts.marks,
    onMarks: acts.onMarks,
    sort: () => acts.sort(column.id),
    filter: (button) => acts.filter(column.id, button),
  };
  return {
    colId: column.id,
    ...(typeof column.header === 'string'
      ? { headerName: column.header }
      : { headerValueGetter: column.header }),
    headerClass: classes,
    cellClass: classes,
    width: column.width,
    minWidth: Math.min(column.width, 44),
    headerComponent: HeaderCell,
    headerComponentParams: header,
    ...(column.pinned ? { pinned: 'left', lockPosition: 'left', suppressMovable: true } : {}),
    lockPinned: true,
    hide: column.hidden ?? false,
    sortable: false,
    cellDataType: false,
    editable: ({ node, data }) => isEditable(column) && node.rowPinned == null && data?.isHeading !== true,
    valueGetter: ({ data }) => (data === undefined ? undefined : column.view(data)),
    valueFormatter: ({ value }) => (value as CellView | undefined)?.text ?? '',
    equals: (a: unknown, b: unknown) => isView(a) && isView(b) && viewKey(a) === viewKey(b),
    cellRenderer: CellRenderer,
    cellEditor: column.choices === undefined ? TextEditor : ChoiceEditor,
    cellEditorPopup: column.choices !== undefined,
    cellEditorParams: extras,
  };
}

function isView(value: unknown): value is CellView {
  return typeof value === 'object' && value !== null && 'text' in value;
}
