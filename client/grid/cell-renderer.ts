import type { ICellRendererComp, ICellRendererParams } from 'ag-grid-community';
import type { CellView } from './grid-column.ts';

type Params = ICellRendererParams<unknown, CellView>;

const SEVERITIES = ['error', 'warning', 'note'] as const;
/** Ties a cell to the message beside it. */
export const CELL_NOTE_ID = 'cell-note';

/** Draws one cell from its view: swatch, text or dash, figure button, and the corner mark of a problem. */
export class CellRenderer implements ICellRendererComp {
  private readonly box = document.createElement('span');
  private drawn = '';

  init(params: Params): void {
    this.box.className = 'cell-box';
    this.draw(params);
  }

  getGui(): HTMLElement {
    return this.box;
  }

  refresh(params: Params): boolean {
    this.draw(params);
    return true;
  }

  private draw({ value, eGridCell }: Params): void {
    const view: CellView = value ?? { text: '' };
    const key = viewKey(view);
    if (key === this.drawn) return;
    this.drawn = key;
    this.box.replaceChildren(...parts(view));
    this.box.className = `cell-box tone-${view.tone ?? 'plain'}`;
    for (const severity of SEVERITIES)
      eGridCell.classList.toggle(`has-${severity}`, view.severity === severity);
    setOrRemove(eGridCell, 'aria-expanded', view.open === undefined ? null : String(view.open));
    setOrRemove(eGridCell, 'aria-invalid', view.severity === 'error' ? 'true' : null);
    setOrRemove(eGridCell, 'data-message', view.message ?? null);
    setOrRemove(eGridCell, 'data-severity', view.severity ?? null);
    setOrRemove(eGridCell, 'aria-describedby', view.message === undefined ? null : CELL_NOTE_ID);
  }
}

/** Everything a view shows in one string: two views with the same key look the same. */
export function viewKey(view: CellView): string {
  const { text, title, tone, swatch, figureAt, open, detail, severity, message } = view;
  return [text, title, tone, swatch, figureAt, open, detail, severity, message].join('\u0001');
}

function parts(view: CellView): Node[] {
  const nodes: Node[] = [];
  if (view.swatch !== undefined) {
    const swatch = element('span', 'swatch');
    swatch.style.background = view.swatch;
    nodes.push(swatch);
  }
  if (view.open !== undefined) nodes.push(element('span', view.open ? 'triangle open' : 'triangle'));
  if (view.tone === 'absent' || view.tone === 'quiet') {
    nodes.push(
      element('span', view.tone === 'absent' ? 'dash' : 'mark'),
      element('span', 'visually-hidden', view.text),
    );
  } else if (view.figureAt !== undefined) {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'figure';
    button.tabIndex = -1;
    button.dataset.figure = view.figureAt;
    button.textContent = view.text;
    nodes.push(button);
  } else if (view.text !== '') {
    const text = element('span', 'cell-text', view.text);
    text.title = view.title ?? '';
    nodes.push(text);
  }
  if (view.detail !== undefined) nodes.push(element('span', 'cell-detail', view.detail));
  return nodes;
}

function element(name: 'span', className: string, text = ''): HTMLElement {
  const made = document.createElement(name);
  made.className = className;
  made.textContent = text;
  return made;
}

function setOrRemove(target: HTMLElement, attribute: string, value: string | null): void {
  if (value === null) target.removeAttribute(attribute);
  else target.setAttribute(attribute, value);
}
