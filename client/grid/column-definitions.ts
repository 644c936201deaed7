import type { ColDef, ColGroupDef } from 'ag-grid-community';
import { CellRenderer, viewKey } from './cell-renderer.ts';
import { ChoiceEditor } from './choice-editor.ts';
import { type CellView, isEditable, type SheetColumn, type SheetRow } from './grid-column.ts';
import { type EditorExtras, TextEditor } from './text-editor.ts';

/** The columns as the grid library wants them; neighbours of one group stand under its heading. */
export function columnDefinitions<Row extends SheetRow>(
  columns: readonly SheetColumn<Row>[],
  leaveBy: EditorExtras['leaveBy'],
): (ColDef<Row> | ColGroupDef<Row>)[] {
  const definitions: (ColDef<Row> | ColGroupDef<Row>)[] = [];
  for (const column of columns) {
    const definition = columnDefinition(column, leaveBy);
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

function columnDefinition<Row extends SheetRow>(
  column: SheetColumn<Row>,
  leaveBy: EditorExtras['leaveBy'],
): ColDef<Row> {
  const classes = [`kind-${column.kind}`, ...(column.numeric ? ['numeric'] : [])];
  const extras: EditorExtras = { sheetColumn: column as unknown as EditorExtras['sheetColumn'], leaveBy };
  return {
    colId: column.id,
    ...(typeof column.header === 'string'
      ? { headerName: column.header }
      : { headerValueGetter: column.header }),
    headerClass: classes,
    cellClass: classes,
    width: column.width,
    minWidth: Math.min(column.width, 44),
    ...(column.pinned ? { pinned: 'left', lockPinned: true } : {}),
    hide: column.hidden ?? false,
    sortable: false,
    suppressMovable: true,
    cellDataType: false,
    editable: ({ node }) => isEditable(column) && node.rowPinned == null,
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
