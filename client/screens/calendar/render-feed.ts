import { html, type TemplateResult } from 'lit-html';
import { screenIcon } from '../../fields/screen-icons.ts';
import { icon } from '../../shell/icons.ts';
import { openDialog } from '../../shell/open-dialog.ts';
import { actions } from '../../state/store.ts';
import type { CalendarBook } from './calendar-book.ts';
import { printDaySheets } from './print-day-sheets.ts';

/** The plan for other places: on paper, as a file, and at an address that calendar programs look at again and again. */
export function renderFeed({ answer, plan }: CalendarBook): TemplateResult {
  if (plan.state !== 'planned') return html``;
  return html`<button type="button" class="button" @click=${() => printDaySheets()}>${screenIcon('print')} Day sheets</button>
    <a class="button" href=${answer.feedPath} download>${icon('export')} Calendar file</a>
    <button type="button" class="button" @click=${() => openSubscribe(new URL(answer.feedPath, location.origin).href)}>Subscribe…</button>`;
}

function openSubscribe(address: string): void {
  openDialog(
    'Subscribe to the calendar',
    (close) => html`<div class="body">
      <h2>Subscribe to the calendar</h2>
      <p>
        A calendar program that is given this address follows the plan as it changes, with a reminder before a window closes. It has to
        reach this computer, and whoever has the address can read the plan.
      </p>
      <label class="field"><span>Address</span><input class="feed-address" readonly .value=${address} @focus=${(event: FocusEvent) => (event.currentTarget as HTMLInputElement).select()} /></label>
      <div class="actions">
        <button type="button" class="button" @click=${close}>Close</button>
        <button type="button" class="button primary" @click=${() => void copy(address, close)}>Copy the address</button>
      </div>
    </div>`,
  );
}

async function copy(address: string, close: () => void): Promise<void> {
  try {
    await navigator.clipboard.writeText(address);
    close();
    actions.say({ kind: 'info', text: 'The address is copied.' });
  } catch {
    // Without leave to write to the clipboard the address can still be copied by hand.
    document.querySelector<HTMLInputElement>('.feed-address')?.focus();
  }
}
