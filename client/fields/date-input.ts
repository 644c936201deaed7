import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { Problem } from '../../server/planning/problem.ts';
import { setRefusal } from './faults.ts';
import { fieldState } from './field-message.ts';
import { type Place, placeElementId, placeKey } from './place.ts';
import type { Save } from './save.ts';

export interface DateInput {
  readonly place: Place;
  readonly label: string;
  /** YYYY-MM-DD, or empty for none. */
  readonly value: string;
  readonly save: Save<string>;
  readonly problems: readonly Problem[];
}

/** A day for a table cell; the browser shows it in the reader's own way of writing dates. */
export function dateInput(options: DateInput): TemplateResult {
  const { place, label, value, problems } = options;
  const { severity, messageId, message } = fieldState(problems, place);
  return html`<input
      type="date"
      class="input date ${value === '' ? 'empty-date' : ''}"
      id=${placeElementId(place)}
      data-at=${placeKey(place)}
      data-severity=${severity ?? nothing}
      aria-label=${label}
      aria-invalid=${severity === 'error' ? 'true' : nothing}
      aria-describedby=${messageId}
      max="9999-12-31"
      .value=${live(value)}
      @change=${(event: Event) => void commit(event.currentTarget as HTMLInputElement, options)}
    />${message}`;
}

async function commit(input: HTMLInputElement, { place, value, save }: DateInput): Promise<void> {
  // A half-typed date reads as empty to the page; the browser says so itself.
  if (input.validity.badInput || input.value === value) return;
  setRefusal(place, await save(input.value));
}
