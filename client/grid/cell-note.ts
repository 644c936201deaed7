import { CELL_NOTE_ID } from './cell-renderer.ts';

const GAP_PX = 6;

/** A small card beside the cell that has the pointer or the focus, when that cell has something to say. */
export function cellNote(host: HTMLElement): { refresh(): void } {
  const note = document.createElement('div');
  note.id = CELL_NOTE_ID;
  note.className = 'cell-note';
  note.hidden = true;
  host.append(note);
  let hovered: HTMLElement | null = null;

  const cellIn = (target: EventTarget | null): HTMLElement | null =>
    target instanceof Element ? target.closest<HTMLElement>('.ag-cell') : null;

  function refresh(): void {
    const focused = cellIn(document.activeElement);
    const cell = hovered?.isConnected && hovered.dataset.message !== undefined ? hovered : focused;
    const message = cell !== null && host.contains(cell) ? cell.dataset.message : undefined;
    note.hidden = cell === null || message === undefined;
    if (cell === null || message === undefined) return;
    const [first = '', ...rest] = message.split('\n');
    const lead = document.createElement('strong');
    lead.textContent = first;
    const more = document.createElement('span');
    more.textContent = rest.join(' ');
    note.replaceChildren(lead, more);
    note.dataset.severity = cell.dataset.severity ?? 'note';
    place(cell);
  }

  /** Below the cell, or above it where there is no room; never outside the window. */
  function place(cell: HTMLElement): void {
    const box = cell.getBoundingClientRect();
    const size = note.getBoundingClientRect();
    const below = box.bottom + GAP_PX + size.height < window.innerHeight;
    note.style.top = `${below ? box.bottom + GAP_PX : box.top - GAP_PX - size.height}px`;
    note.style.left = `${Math.max(GAP_PX, Math.min(box.left, window.innerWidth - size.width - GAP_PX))}px`;
  }

  host.addEventListener('mouseover', (event) => {
    const cell = cellIn(event.target);
    if (cell === hovered) return;
    hovered = cell;
    refresh();
  });
  host.addEventListener('mouseleave', () => {
    hovered = null;
    refresh();
  });
  host.addEventListener('focusin', refresh);
  host.addEventListener('focusout', () => queueMicrotask(refresh));
  host.addEventListener('scroll', refresh, { capture: true, passive: true });
  host.addEventListener('keydown', (event) => {
    if (event.key === 'Escape' && !note.hidden) note.hidden = true;
  });
  return { refresh };
}
