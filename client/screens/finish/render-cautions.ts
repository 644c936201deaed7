import { html, type TemplateResult } from 'lit-html';
import { screenIcon } from '../../fields/screen-icons.ts';

export const RAGS_CAUTION = 'Oily rags can set themselves alight: at once into water, in a closed metal can.';

/** Short enough to be read, and never hidden. */
export const CAUTIONS = [
  'The label and the safety data sheet come first; figures here do not replace them.',
  'No flame, spark, heater or pilot light while solvent vapour is about.',
  'Wear the respirator the label names; a dust mask does not hold back vapour.',
  RAGS_CAUTION,
  'Two-part products with isocyanates are not for a home shop.',
  'Local codes and licensed practice decide what may be sprayed and stored where.',
];

export function renderCautions(): TemplateResult {
  return html`<aside class="cautions" aria-label="Cautions">
    <h2>${screenIcon('caution')} Before you open a can</h2>
    <ul>
      ${CAUTIONS.map((caution) => html`<li>${caution}</li>`)}
    </ul>
  </aside>`;
}
