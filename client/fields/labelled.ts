import { html, nothing, type TemplateResult } from 'lit-html';
import { type Place, placeElementId } from './place.ts';

/** A field outside a table: its name above it, a word of help below. `control` is a text or choice input. */
export function labelled(
  place: Place,
  label: string,
  control: TemplateResult,
  help: TemplateResult | string | typeof nothing | undefined = nothing,
): TemplateResult {
  return html`<div class="field">
    <label for=${placeElementId(place)}>${label}</label>
    ${control} ${help === nothing || help === undefined ? nothing : html`<small>${help}</small>`}
  </div>`;
}
