import { render, type TemplateResult } from 'lit-html';

/**
 * Shows a modal dialog with its own content and takes it away when it closes. The browser keeps the focus inside
 * and gives it back. The content's form decides what happens; `close` ends the dialog.
 */
export function openDialog(label: string, content: (close: () => void) => TemplateResult): void {
  const dialog = document.createElement('dialog');
  dialog.setAttribute('aria-label', label);
  const close = (): void => dialog.close();
  render(content(close), dialog);
  dialog.addEventListener('close', () => dialog.remove());
  dialog.addEventListener('click', (event) => {
    if (event.target === dialog) close();
  });
  document.body.append(dialog);
  dialog.showModal();
}
