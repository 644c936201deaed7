/** On a focused header: Enter sorts by its column, Alt+Down or Ctrl+Enter opens its filter. The grid library moves and resizes. */
export function headerKeys(
  host: HTMLElement,
  sort: (columnId: string) => void,
  filter: (columnId: string, button: HTMLElement) => void,
): void {
  host.addEventListener(
    'keydown',
    (event) => {
      const header = event.target;
      if (!(header instanceof HTMLElement) || !header.matches('.ag-header-cell')) return;
      const columnId = header.getAttribute('col-id') ?? '';
      const filterButton = header.querySelector<HTMLElement>('.head-filter');
      const control = event.ctrlKey || event.metaKey;
      if ((event.key === 'ArrowDown' && event.altKey) || (event.key === 'Enter' && control)) {
        if (filterButton !== null) filter(columnId, filterButton);
      } else if (event.key === 'Enter' && header.querySelector('.head-sort') !== null) sort(columnId);
      else return;
      event.preventDefault();
      event.stopPropagation();
    },
    { capture: true },
  );
}
