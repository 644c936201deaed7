import { html } from 'lit-html';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { openDialog } from '../../shell/open-dialog.ts';
import type { SupplierLines } from './group-lines.ts';
import { supplierMessage } from './supplier-message.ts';

/** Shows the message to a supplier, to copy into a letter or a chat. */
export function showMessage(book: ScreenBook, group: SupplierLines, neededBy: string): void {
  openDialog(`Message to ${group.name}`, (close) => {
    const text = (prices: boolean): string => supplierMessage(book, group.lines, { prices, neededBy });
    return html`<form method="dialog" class="message" @submit=${(event: Event) => event.preventDefault()}>
      <h2>Message to ${group.name}</h2>
      <label class="field"
        ><span>Text</span><textarea name="text" rows="12" .value=${text(false)}></textarea>
      </label>
      <label class="check"
        ><input type="checkbox" name="prices" @change=${(event: Event) => {
          const box = event.currentTarget as HTMLInputElement;
          const area = box.form?.elements.namedItem('text') as HTMLTextAreaElement;
          area.value = text(box.checked);
        }} />
        with the prices the plan reckons with</label
      >
      <p class="aside-words" role="status"></p>
      <div class="actions">
        <button type="button" class="button" @click=${close}>Close</button>
        <button type="button" class="button primary" @click=${(event: Event) => void copy(event)}>Copy</button>
      </div>
    </form>`;
  });
}

async function copy(event: Event): Promise<void> {
  const { form } = event.currentTarget as HTMLButtonElement;
  const area = form?.elements.namedItem('text') as HTMLTextAreaElement;
  const said = await navigator.clipboard.writeText(area.value).then(
    () => 'Copied.',
    () => 'The browser does not let the page copy. Select the text and copy it yourself.',
  );
  area.select();
  const status = form?.querySelector<HTMLElement>('[role="status"]');
  if (status !== null && status !== undefined) status.textContent = said;
}
