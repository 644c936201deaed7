import { actions } from '../state/store.ts';

/** The dialogs that bring things in and take things out; their code is fetched when they are first wanted. */

export function openImport(file: File | null = null): void {
  void fetched(async () => (await import('./import-dialog.ts')).openImportDialog(file));
}

export function openExport(): void {
  void fetched(async () => (await import('./export-dialog.ts')).openExportDialog());
}

/** Opens the import with a file dropped anywhere on the page, which the browser would otherwise show instead of it. */
export function listenForDroppedFiles(): void {
  const holdsFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') === true;
  window.addEventListener('dragover', (event) => {
    if (holdsFile(event)) event.preventDefault();
  });
  window.addEventListener('drop', (event) => {
    if (!holdsFile(event)) return;
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file !== undefined) openImport(file);
  });
}

async function fetched(open: () => Promise<void>): Promise<void> {
  try {
    await open();
  } catch {
    actions.say({
      kind: 'error',
      text: 'The dialog could not be fetched.',
      wayOut: 'Check that the Plywright server is still running, then try again.',
    });
  }
}
