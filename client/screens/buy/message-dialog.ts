import { html } from 'lit-html';
import type { SupplierMessage } from '../../../server/http/contract.ts';
import { openDialog } from '../../shell/open-dialog.ts';
import { ApiError, request } from '../../state/api.ts';
import { actions, getState } from '../../state/store.ts';

/** Shows the message to a supplier, to copy into a letter or a chat. */
export async function showMessage(supplierId: string, name: string): Promise<void> {
  const first = await messageText(supplierId, false);
  if (first === null) return;
  openDialog(
    `Message to ${name}`,
    (close) => html`<form method="dialog" class="message" @submit=${(event: Event) => event.preventDefault()}>
      <h2>Message to ${name}</h2>
      <label class="field"
        ><span>Text</span><textarea name="text" rows="12" .value=${first}></textarea>
      </label>
      <label class="check"
        ><input type="checkbox" name="prices" @change=${async (event: Event) => {
          const box = event.currentTarget as HTMLInputElement;
          const area = box.form?.elements.namedItem('text') as HTMLTextAreaElement;
          area.value = (await messageText(supplierId, box.checked)) ?? area.value;
        }} />
        with the prices the plan reckons with</label
      >
      <p class="aside-words" role="status"></p>
      <div class="actions">
        <button type="button" class="button" @click=${close}>Close</button>
        <button type="button" class="button primary" @click=${(event: Event) => void copy(event)}>Copy</button>
      </div>
    </form>`,
  );
}

async function messageText(supplierId: string, prices: boolean): Promise<string | null> {
  const project = encodeURIComponent(getState().project?.id ?? '');
  const query = `supplier=${encodeURIComponent(supplierId)}&prices=${prices ? 'yes' : 'no'}`;
  try {
    return (await request<SupplierMessage>('GET', `/api/projects/${project}/supplier-message?${query}`)).text;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    actions.say({ kind: 'error', text: error.message, wayOut: error.wayOut });
    return null;
  }
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
