import { html, nothing, type TemplateResult } from 'lit-html';
import type { Problem } from '../../server/planning/problem.ts';
import { setRefusal } from './faults.ts';
import { fieldState } from './field-message.ts';
import { type Place, placeElementId, placeKey } from './place.ts';
import type { Save } from './save.ts';

export interface Choice {
  readonly value: string;
  readonly text: string;
  /** Choices of one group stand together under its name. */
  readonly group?: string;
}

export interface ChoiceInput {
  readonly place: Place;
  readonly label: string;
  readonly value: string;
  readonly choices: readonly Choice[];
  readonly save: Save<string>;
  readonly problems: readonly Problem[];
  readonly disabled?: boolean;
}

/** A list to choose from, for a table cell. A stored value that is not offered is still shown, never swapped silently. */
export function choiceInput(options: ChoiceInput): TemplateResult {
  const { place, label, value, choices, problems, disabled = false } = options;
  const { severity, messageId, message } = fieldState(problems, place);
  const known = choices.some((choice) => choice.value === value);
  const offered = known
    ? choices
    : [{ value, text: value === '' ? 'not chosen' : `${value} (not offered)` }, ...choices];
  return html`<select
      class="input"
      id=${placeElementId(place)}
      data-at=${placeKey(place)}
      data-severity=${severity ?? nothing}
      aria-label=${label}
      aria-invalid=${severity === 'error' ? 'true' : nothing}
      aria-describedby=${messageId}
      ?disabled=${disabled}
      @change=${(event: Event) => void commit(event.currentTarget as HTMLSelectElement, options)}
    >
      ${grouped(offered).map(([group, list]) =>
        group === ''
          ? list.map((choice) => option(choice, value))
          : html`<optgroup label=${group}>${list.map((choice) => option(choice, value))}</optgroup>`,
      )}</select
    >${message}`;
}

function option(choice: Choice, value: string): TemplateResult {
  return html`<option value=${choice.value} .selected=${choice.value === value}>${choice.text}</option>`;
}

/** Groups in order of first appearance. */
export function grouped(choices: readonly Choice[]): [string, Choice[]][] {
  const groups = new Map<string, Choice[]>();
  for (const choice of choices) {
    const list = groups.get(choice.group ?? '');
    if (list === undefined) groups.set(choice.group ?? '', [choice]);
    else list.push(choice);
  }
  return [...groups];
}

async function commit(select: HTMLSelectElement, { place, value, save }: ChoiceInput): Promise<void> {
  const refusal = await save(select.value);
  if (refusal !== null) select.value = value;
  setRefusal(place, refusal);
}
