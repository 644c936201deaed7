import { html, type TemplateResult } from 'lit-html';
import { type Choice, grouped } from '../fields/choice-input.ts';

/** A list to choose an answer from; nothing is stored until the import is made. */
export function renderSelect(
  value: string,
  choices: readonly Choice[],
  choose: (value: string) => void,
  label?: string,
): TemplateResult {
  const list = grouped(choices).map(([group, options]) => {
    const drawn = options.map(
      (option) =>
        html`<option value=${option.value} .selected=${option.value === value}>${option.text}</option>`,
    );
    return group === '' ? drawn : html`<optgroup label=${group}>${drawn}</optgroup>`;
  });
  const onChange = (event: Event): void => choose((event.currentTarget as HTMLSelectElement).value);
  return label === undefined
    ? html`<select @change=${onChange}>${list}</select>`
    : html`<select class="input" aria-label=${label} @change=${onChange}>${list}</select>`;
}
