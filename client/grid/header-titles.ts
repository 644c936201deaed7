import type { SheetColumn, SheetRow } from './grid-column.ts';

/** Gives a header its column's description as a tooltip when the pointer first gets there. */
export function headerTitles<Row extends SheetRow>(
  host: HTMLElement,
  columns: readonly SheetColumn<Row>[],
): void {
  const descriptions = new Map(columns.map(({ id, describe }) => [id, describe]));
  host.addEventListener('mouseover', (event) => {
    const header =
      event.target instanceof Element ? event.target.closest<HTMLElement>('.ag-header-cell') : null;
    const words = descriptions.get(header?.getAttribute('col-id') ?? '');
    if (header !== null && header.title === '' && words !== undefined) header.title = words;
  });
}
