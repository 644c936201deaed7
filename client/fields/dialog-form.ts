import { html, type TemplateResult } from 'lit-html';
import type { Reading } from '../format/reading.ts';
import type { Refusal } from './faults.ts';
import { focusNext } from './focus-row.ts';

/** A dialog's fields are read only when it is sent; what cannot be read is said above the buttons. */

class Unreadable extends Error {
  readonly field: HTMLInputElement;
  constructor(field: HTMLInputElement, message: string) {
    super(message);
    this.field = field;
  }
}

/** What one field of a dialog says; ends the sending when it cannot be read. */
export function dialogValue<Value>(
  form: HTMLFormElement,
  name: string,
  read: (typed: string) => Reading<Value>,
): Value {
  const field = form.elements.namedItem(name) as HTMLInputElement;
  const reading = read(field.value);
  if (reading.ok) return reading.value;
  throw new Unreadable(field, reading.message);
}

export function dialogText(form: HTMLFormElement, name: string): string {
  return (form.elements.namedItem(name) as HTMLInputElement).value.trim();
}

/**
 * Sends a dialog: `work` reads its fields and answers why it was refused, or null; then the dialog closes. A second press
 * while the first is under way does nothing. `next` is where the keyboard goes on when what opened the dialog goes away.
 */
export async function sendDialog(
  event: SubmitEvent,
  close: () => void,
  work: (form: HTMLFormElement) => Promise<Refusal | null>,
  next?: string,
): Promise<void> {
  event.preventDefault();
  const form = event.currentTarget as HTMLFormElement;
  if (form.dataset.sending !== undefined) return;
  form.dataset.sending = '';
  for (const field of form.querySelectorAll('[aria-invalid]')) field.removeAttribute('aria-invalid');
  try {
    const refusal = await work(form);
    if (refusal === null) {
      close();
      if (next !== undefined) focusNext(next);
    } else say(form, `${refusal.message} ${refusal.wayOut}`);
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    error.field.setAttribute('aria-invalid', 'true');
    error.field.focus();
    say(form, error.message);
  } finally {
    delete form.dataset.sending;
  }
}

function say(form: HTMLFormElement, words: string): void {
  const alert = form.querySelector('.said');
  if (alert !== null) alert.textContent = words;
}

/** The end of a dialog: what is wrong, and its two buttons. */
export function dialogEnd(close: () => void, send: string): TemplateResult {
  return html`<p class="said error" role="alert"></p>
    <div class="actions">
      <button type="button" class="button" @click=${close}>Cancel</button>
      <button class="button primary">${send}</button>
    </div>`;
}
