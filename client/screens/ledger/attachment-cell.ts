import { html, type TemplateResult } from 'lit-html';
import type { PaymentRow } from '../../../server/http/contract.ts';
import { setRefusal } from '../../fields/faults.ts';
import { fieldState } from '../../fields/field-message.ts';
import { type Place, placeElementId, placeKey } from '../../fields/place.ts';
import { saveChanges } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { icon } from '../../shell/icons.ts';
import { getState } from '../../state/store.ts';
import { ATTACHMENT_ACCEPT, attachmentPath, keepAttachment } from './keep-attachment.ts';

/** The picture or PDF of one payment: shown by its name, or a way to add one. */
export function attachmentCell({ problems }: ScreenBook, row: PaymentRow, name: string): TemplateResult {
  const place: Place = { table: 'payments', id: row.id, field: 'attachmentId' };
  const { messageId, message } = fieldState(problems, place);
  if (row.attachmentId === '') {
    const id = placeElementId(place);
    return html`<label class="button attach" for=${id}>Attach…</label
      ><input
        type="file"
        class="visually-hidden"
        id=${id}
        data-at=${placeKey(place)}
        accept=${ATTACHMENT_ACCEPT}
        aria-label="Picture or PDF for ${name}"
        aria-describedby=${messageId}
        @change=${(event: Event) => void attach(event.currentTarget as HTMLInputElement, row, place)}
      />${message}`;
  }
  const kept = getState().attachments?.find(({ id }) => id === row.attachmentId);
  return html`<span class="paper-kept"
      ><a href=${attachmentPath(row.attachmentId)} target="_blank" rel="noopener">${kept?.name ?? 'open'}</a
      ><button
        type="button"
        class="button plain icon"
        aria-label="Take the paper off ${name}"
        title="Take off"
        data-at=${placeKey(place)}
        @click=${() => void link(row.id, '', `take the paper off ${name}`)}
      >
        ${icon('close')}
      </button></span
    >${message}`;
}

async function attach(input: HTMLInputElement, row: PaymentRow, place: Place): Promise<void> {
  const [file] = input.files ?? [];
  if (file === undefined) return;
  const { kept, refusal } = await keepAttachment(file);
  input.value = '';
  setRefusal(place, refusal ?? (await link(row.id, kept.id, `attach ${kept.name}`)));
}

function link(id: string, attachmentId: string, label: string) {
  return saveChanges([{ op: 'update', table: 'payments', id, values: { attachmentId } }], label);
}
