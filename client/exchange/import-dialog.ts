import '../fields/fields.css';
import './exchange.css';
import { render } from 'lit-html';
import { type ImportDraft, importActions } from './import-draft.ts';
import { renderImport } from './render-import.ts';

/**
 * The import: a list is pasted, chosen or dropped, looked at and questioned, and then added as one edit. The dialog
 * keeps the focus inside; Escape closes it. What was pasted stays for the next time until it has been imported.
 */
export function openImportDialog(file: File | null): void {
  const open = document.querySelector<HTMLDialogElement>('dialog.import');
  if (open !== null) {
    if (file !== null) open.dispatchEvent(new CustomEvent('list-file', { detail: file }));
    return;
  }
  if (document.querySelector('dialog[open]') !== null) return;
  const dialog = document.createElement('dialog');
  dialog.className = 'import';
  dialog.setAttribute('aria-labelledby', 'import-title');

  const acts = importActions((before) => {
    draw();
    moveFocus(before, acts.draft());
  });
  const close = (): void => dialog.close();
  const draw = (): void => {
    render(renderImport(acts, close), dialog);
  };

  /** A new step is begun at its title; within a step the focus stays where it is. */
  function moveFocus(before: ImportDraft, now: ImportDraft): void {
    const step = (draft: ImportDraft): string =>
      draft.preview !== null ? 'preview' : draft.project !== null ? 'project' : 'source';
    if (step(before) !== step(now)) dialog.querySelector<HTMLElement>('#import-title')?.focus();
  }

  dialog.addEventListener('list-file', (event) => void acts.readFile((event as CustomEvent<File>).detail));
  dialog.addEventListener('dragover', (event) => event.preventDefault());
  dialog.addEventListener('dragenter', () => dialog.classList.add('dropping'));
  dialog.addEventListener('dragleave', (event) => {
    if (!dialog.contains(event.relatedTarget as Node | null)) dialog.classList.remove('dropping');
  });
  dialog.addEventListener('drop', () => dialog.classList.remove('dropping'));
  dialog.addEventListener('close', () => {
    lastTyped = acts.draft().typed;
    dialog.remove();
  });

  document.body.append(dialog);
  acts.type(lastTyped);
  dialog.showModal();
  dialog.querySelector<HTMLElement>('textarea')?.focus();
  if (file !== null) void acts.readFile(file);
}

/** Text left in the dialog when it was closed without importing. */
let lastTyped = '';
