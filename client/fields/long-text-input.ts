import { html, nothing, type TemplateResult } from 'lit-html';
import type { Problem } from '../../server/planning/problem.ts';
import { setRefusal } from './faults.ts';
import { fieldState } from './field-message.ts';
import { type Place, placeElementId, placeKey } from './place.ts';
import type { Save } from './save.ts';
import { clearTyping, markTyping, typedText } from './typed-text.ts';

export interface LongTextInput {
  readonly place: Place;
  readonly label: string;
  readonly text: string;
  readonly rows: number;
  readonly save: Save<string>;
  readonly problems: readonly Problem[];
  readonly placeholder?: string;
}

/** A field for several lines. Enter begins a new line; what is typed is taken when the field is left, and Escape takes it back. */
export function longTextInput(options: LongTextInput): TemplateResult {
  const { place, label, text, rows, problems, placeholder } = options;
  const { severity, messageId, message } = fieldState(problems, place);
  return html`<textarea
      class="input"
      id=${placeElementId(place)}
      data-at=${placeKey(place)}
      data-severity=${severity ?? nothing}
      aria-label=${label}
      aria-describedby=${messageId}
      rows=${rows}
      placeholder=${placeholder ?? nothing}
      @input=${(event: Event) => markTyping(event.currentTarget as HTMLTextAreaElement)}
      @change=${(event: Event) => void commit(event.currentTarget as HTMLTextAreaElement, options)}
      @keydown=${(event: KeyboardEvent) => takeBack(event, options)}
      ${typedText(text)}
    ></textarea>${message}`;
}

async function commit(area: HTMLTextAreaElement, { place, text, save }: LongTextInput): Promise<void> {
  const typed = area.value.trim();
  const refusal = typed === text ? null : await save(typed);
  if (refusal === null) clearTyping(area);
  setRefusal(place, refusal);
}

function takeBack(event: KeyboardEvent, { place, text }: LongTextInput): void {
  const area = event.currentTarget as HTMLTextAreaElement;
  if (event.key !== 'Escape' || area.value === text) return;
  event.stopPropagation();
  clearTyping(area);
  area.value = text;
  setRefusal(place, null);
}
