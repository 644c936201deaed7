import { actions, getState } from '../state/store.ts';
import { openHelp } from './help-dialog.ts';

/** The keys that work everywhere on the page, unless a text field has its own use for them. */
export function listenForShortcuts(): void {
  window.addEventListener('keydown', (event) => {
    if (event.defaultPrevented || document.querySelector('dialog[open]') !== null) return;
    if (event.key === 'F6') {
      event.preventDefault();
      goToRegion(event.shiftKey ? -1 : 1);
      return;
    }
    if (event.key === 'Escape') closeSheet(event);
    if (isTextField(event.target)) return;
    const control = event.ctrlKey || event.metaKey;
    const key = event.key.toLowerCase();
    if (control && key === 'z') run(event, event.shiftKey ? actions.redo : actions.undo);
    else if (control && key === 'y') run(event, actions.redo);
    // In the grid a question mark begins an entry like any other character.
    else if (
      event.key === '?' &&
      !(event.target instanceof Element && event.target.closest('.ag-cell') !== null)
    )
      run(event, openHelp);
  });
}

function run(event: KeyboardEvent, work: () => unknown): void {
  event.preventDefault();
  void work();
}

function closeSheet(event: KeyboardEvent): void {
  if (
    event.target instanceof Element &&
    event.target.closest('.ag-cell-inline-editing, .choice-editor') !== null
  )
    return;
  const { working, problemsOpen } = getState();
  if (working !== null) actions.closeWorking();
  else if (problemsOpen) {
    actions.showProblems(false);
    document.querySelector<HTMLElement>('#problems-button')?.focus();
  }
}

/** Moves the focus to the next part of the page: bar, screens, work area, open sheets. The grid takes it at its last cell. */
function goToRegion(step: 1 | -1): void {
  const regions = [...document.querySelectorAll<HTMLElement>('[data-region]')];
  const now = regions.findIndex((region) => region.contains(document.activeElement));
  const next = regions[(now + step + regions.length) % regions.length];
  const target = next?.querySelector<HTMLElement>(
    '.ag-cell.range-anchor, [aria-current="page"], button:not(:disabled), a[href], input, select, [tabindex="0"]',
  );
  (target ?? next)?.focus();
}

function isTextField(target: EventTarget | null): boolean {
  return (
    target instanceof Element &&
    target.closest('input:not([type="checkbox"], [type="radio"]), textarea, select, [contenteditable]') !==
      null
  );
}
