import { html, nothing, type TemplateResult } from 'lit-html';
import type { Problem } from '../../server/planning/problem.ts';
import type { Reading } from '../format/reading.ts';
import { understood } from '../format/reading.ts';
import { setRefusal } from './faults.ts';
import { fieldState } from './field-message.ts';
import { type Place, placeElementId, placeKey } from './place.ts';
import type { Save } from './save.ts';
import { clearTyping, markTyping, typedText } from './typed-text.ts';

export interface TextInput<Value> {
  readonly place: Place;
  /** Accessible name; labelled fields show it as well. */
  readonly label: string;
  /** The stored value as the field shows it. */
  readonly text: string;
  readonly read: (typed: string) => Reading<Value>;
  readonly save: Save<Value>;
  readonly problems: readonly Problem[];
  /** Numbers stand at the end of their cell and bring up a number keypad. */
  readonly numeric?: boolean;
  readonly placeholder?: string;
  readonly disabled?: boolean;
}

/** An input for a table cell: its name is spoken, its message stands below it. */
export function textInput<Value>(options: TextInput<Value>): TemplateResult {
  const { place, label, text, problems, numeric = false, placeholder, disabled = false } = options;
  const { severity, messageId, message } = fieldState(problems, place);
  return html`<input
      class="input ${numeric ? 'number' : ''}"
      id=${placeElementId(place)}
      data-at=${placeKey(place)}
      data-severity=${severity ?? nothing}
      aria-label=${label}
      aria-invalid=${severity === 'error' ? 'true' : nothing}
      aria-describedby=${messageId}
      inputmode=${numeric ? 'decimal' : nothing}
      autocomplete="off"
      spellcheck="false"
      placeholder=${placeholder ?? nothing}
      ?disabled=${disabled}
      @input=${(event: Event) => markTyping(event.currentTarget as HTMLInputElement)}
      @change=${(event: Event) => void commit(event.currentTarget as HTMLInputElement, options)}
      @keydown=${(event: KeyboardEvent) => onKey(event, options)}
      ${typedText(text)}
    />${message}`;
}

/** What is typed is taken as it stands. */
export const asTyped = (typed: string): Reading<string> => understood(typed.trim());

async function commit<Value>(
  input: HTMLInputElement,
  { place, text, read, save }: TextInput<Value>,
): Promise<void> {
  if (input.value === text) return giveUp(input, place, text);
  const reading = read(input.value);
  const refusal = reading.ok ? await save(reading.value) : { message: reading.message, wayOut: '' };
  if (refusal === null) clearTyping(input);
  setRefusal(place, refusal);
}

function onKey<Value>(event: KeyboardEvent, { place, text }: TextInput<Value>): void {
  const input = event.currentTarget as HTMLInputElement;
  if (event.key !== 'Escape' || (input.value === text && input.dataset.typing === undefined)) return;
  event.stopPropagation();
  giveUp(input, place, text);
}

function giveUp(input: HTMLInputElement, place: Place, text: string): void {
  clearTyping(input);
  input.value = text;
  setRefusal(place, null);
}
