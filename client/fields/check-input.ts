import { html, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { setRefusal } from './faults.ts';
import { type Place, placeElementId, placeKey } from './place.ts';
import type { Save } from './save.ts';

/** A yes-or-no with its words beside it. */
export function checkInput(place: Place, label: string, value: boolean, save: Save<boolean>): TemplateResult {
  return html`<label class="check" for=${placeElementId(place)}
    ><input
      type="checkbox"
      id=${placeElementId(place)}
      data-at=${placeKey(place)}
      .checked=${live(value)}
      @change=${async (event: Event) => {
        const input = event.currentTarget as HTMLInputElement;
        const refusal = await save(input.checked);
        if (refusal !== null) input.checked = value;
        setRefusal(place, refusal);
      }}
    />
    ${label}</label
  >`;
}
