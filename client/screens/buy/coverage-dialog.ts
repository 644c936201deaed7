import { html } from 'lit-html';
import { dialogEnd, dialogText, dialogValue, sendDialog } from '../../fields/dialog-form.ts';
import { projectToday } from '../../fields/project-today.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { readOptionalNumber } from '../../format/read-number.ts';
import { openDialog } from '../../shell/open-dialog.ts';
import { patchProduct } from '../catalogue/product-requests.ts';
import type { Coverage } from './render-coverages.ts';

const DECIMALS = 2;

/** Puts the coverage the user got in place of the catalogue's, only when told to; the notice offers the way back. */
export function askToTakeOver({ formats }: ScreenBook, { id, name, got, coats }: Coverage): void {
  const mine = got.value === null ? '' : String(Number(got.value.toFixed(DECIMALS)));
  const number = (field: 'low' | 'typical' | 'high', label: string) =>
    html`<label class="field"
      ><span>${label}</span><input name=${field} inputmode="decimal" autocomplete="off" .value=${mine} /><small>m²/L</small></label
    >`;
  openDialog(
    `My coverage of ${name}`,
    (close) => html`<form
      method="dialog"
      novalidate
      @submit=${(event: SubmitEvent) => void sendDialog(event, close, (form) => save(form, id))}
    >
      <h2>My coverage of ${name}</h2>
      <p class="aside-words">
        You got ${formats.figure(got.value, got.unit)}. This replaces the catalogue’s figures of this product for every project; what
        stood there can be put back.
      </p>
      <div class="form-grid">${number('low', 'Low')} ${number('typical', 'Typical')} ${number('high', 'High')}</div>
      <label class="field"
        ><span>Source</span
        ><input name="source" maxlength="500" autocomplete="off" .value=${`own measurement, ${coats === 1 ? '1 coat' : `${coats} coats`}`}
      /></label>
      ${dialogEnd(close, 'Use these')}
    </form>`,
  );
}

function save(form: HTMLFormElement, productId: string) {
  const value = (field: string) =>
    dialogValue(form, field, (typed) => readOptionalNumber(typed, { least: 0 }));
  return patchProduct(productId, {
    figures: {
      coverage: {
        low: value('low'),
        typical: value('typical'),
        high: value('high'),
        unit: 'm2/L',
        basis: 'user',
        source: dialogText(form, 'source'),
        readOn: projectToday(),
        note: null,
      },
    },
  });
}
