import type { IHeaderComp, IHeaderParams } from 'ag-grid-community';
import { render } from 'lit-html';
import { icon } from '../shell/icons.ts';

/** What the headers show of the order and the choice of rows. */
export interface HeaderMarks {
  readonly sorted: { readonly columnId: string; readonly direction: SortDirection } | null;
  readonly filtered: ReadonlySet<string>;
}

export type SortDirection = 'up' | 'down';

export const NO_MARKS: HeaderMarks = { sorted: null, filtered: new Set() };

export interface HeaderExtras {
  /** The column's name in a sentence. */
  readonly describe: string;
  readonly sorts: boolean;
  readonly filters: boolean;
  readonly marks: () => HeaderMarks;
  /** Calls the header whenever the marks have changed, until the returned function is called. */
  readonly onMarks: (mark: () => void) => () => void;
  readonly sort: () => void;
  readonly filter: (button: HTMLElement) => void;
}

type Params = IHeaderParams & HeaderExtras;

const ARIA_SORT = { up: 'ascending', down: 'descending' } as const;

/** A column's name with two small buttons that show while they are at work or wanted: filter, and sort. */
export class HeaderCell implements IHeaderComp {
  private readonly box = document.createElement('div');
  private readonly label = document.createElement('span');
  private readonly sortButton = tool('head-sort');
  private readonly filterButton = tool('head-filter');
  private params: Params | null = null;
  private leave: () => void = () => undefined;

  init(params: Params): void {
    const { describe, sorts, filters } = params;
    this.box.className = 'head-cell';
    this.label.className = 'head-label';
    this.box.append(this.label);
    if (filters) {
      this.filterButton.setAttribute('aria-label', `Filter by ${describe}`);
      this.filterButton.setAttribute('aria-haspopup', 'dialog');
      this.filterButton.title = `Show only some of the list, by ${describe} (Alt+Down)`;
      render(icon('filter'), this.filterButton);
      this.filterButton.addEventListener('click', () => params.filter(this.filterButton));
      this.box.append(this.filterButton);
    }
    if (sorts) {
      this.sortButton.setAttribute('aria-label', `Sort by ${describe}`);
      this.sortButton.title = `Sort by ${describe}: up, down, list order (Enter)`;
      this.sortButton.addEventListener('click', () => params.sort());
      this.box.append(this.sortButton);
    }
    this.refresh(params);
    this.leave = params.onMarks(() => this.mark());
    // The grid writes an order of its own on a new header first.
    queueMicrotask(() => this.mark());
  }

  getGui(): HTMLElement {
    return this.box;
  }

  refresh(params: Params): boolean {
    this.params = params;
    this.label.textContent = params.displayName;
    this.mark();
    return true;
  }

  destroy(): void {
    this.leave();
  }

  private mark(): void {
    if (this.params === null) return;
    const { column, marks, sorts, eGridHeader } = this.params;
    const columnId = column.getColId();
    const { sorted, filtered } = marks();
    const direction = sorted?.columnId === columnId ? sorted.direction : null;
    this.box.classList.toggle('is-sorted', direction !== null);
    this.box.classList.toggle('is-filtered', filtered.has(columnId));
    if (sorts) render(icon(direction === null ? 'sort' : direction), this.sortButton);
    if (direction === null) eGridHeader.removeAttribute('aria-sort');
    else eGridHeader.setAttribute('aria-sort', ARIA_SORT[direction]);
  }
}

function tool(name: string): HTMLButtonElement {
  const button = document.createElement('button');
  button.type = 'button';
  button.tabIndex = -1;
  button.className = `head-tool ${name}`;
  return button;
}
