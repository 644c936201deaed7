import './fields.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { figureButton } from '../panels/figure-button.ts';

/** One number of a row of numbers: its name, the number, which opens its working, and a word below. */
export function stat(
  name: string,
  at: string,
  text: string,
  options: { readonly below?: string | TemplateResult; readonly lead?: boolean } = {},
): TemplateResult {
  return html`<div class="stat ${options.lead === true ? 'lead' : ''}">
    <dt>${name}</dt>
    <dd>
      ${figureButton(at, text, name)}${options.below === undefined ? nothing : html`<small>${options.below}</small>`}
    </dd>
  </div>`;
}
