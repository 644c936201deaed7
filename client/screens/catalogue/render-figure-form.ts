import { html, nothing, type TemplateResult } from 'lit-html';
import type { Basis, Product, ProductFigure, ProductFigureName } from '../../../server/planning/product.ts';
import { isoToday } from '../../fields/iso-today.ts';
import { readOptionalNumber } from '../../format/read-number.ts';
import { setCatalogueView } from './catalogue-view.ts';
import { BASIS_WORDS } from './evidence-words.ts';
import { FIGURE_TERMS } from './figure-terms.ts';
import { unitSymbol } from './figure-value-text.ts';
import { patchProduct } from './product-requests.ts';

/** The form of one figure: its range, and what it stands on. A figure and its evidence are changed together. */
export function renderFigureForm(
  product: Product,
  name: ProductFigureName,
  figure: ProductFigure | null,
): TemplateResult {
  const { words, unit } = FIGURE_TERMS[name];
  const symbol = unitSymbol(unit, product.unit);
  const number = (
    field: 'low' | 'typical' | 'high',
    label: string,
  ): TemplateResult => html`<label class="field"
    ><span>${label}</span
    ><input name=${field} inputmode="decimal" autocomplete="off" value=${figure?.[field] ?? ''} /><small>${symbol}</small></label
  >`;
  return html`<form
    class="figure-form"
    aria-label=${words}
    novalidate
    @submit=${(event: SubmitEvent) => void submit(event, product, name)}
    @keydown=${(event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      leave(name);
    }}
  >
    <h3>${words}</h3>
    <div class="form-grid">
      ${number('low', 'Low')} ${number('typical', 'Typical')} ${number('high', 'High')}
      <label class="field"
        ><span>Stands on</span>
        <select name="basis">
          ${(Object.keys(BASIS_WORDS) as Basis[]).map(
            (basis) =>
              html`<option value=${basis} ?selected=${basis === 'user'}>${BASIS_WORDS[basis]}</option>`,
          )}
        </select></label
      >
      <label class="field"><span>On</span><input name="readOn" type="date" value=${isoToday()} /></label>
      <label class="field form-wide"
        ><span>Source</span><input name="source" maxlength="500" autocomplete="off" placeholder="label, data sheet, own trial" />
        ${figure === null || figure.source === '' ? nothing : html`<small>so far: ${figure.source}</small>`}</label
      >
      <label class="field form-wide"><span>Note</span><input name="note" maxlength="500" autocomplete="off" value=${figure?.note ?? ''} /></label>
    </div>
    <p class="said error" role="alert"></p>
    <div class="toolbar">
      <button class="button primary">Save</button>
      <button type="button" class="button" @click=${() => leave(name)}>Cancel</button>
      ${
        figure === null
          ? nothing
          : html`<span class="spacer"></span>
            <button type="button" class="button plain" @click=${() => void patchProduct(product.id, { figures: { [name]: null } }).then(() => leave(name))}>
              Not known
            </button>`
      }
    </div>
  </form>`;
}

async function submit(event: SubmitEvent, product: Product, name: ProductFigureName): Promise<void> {
  event.preventDefault();
  const form = event.currentTarget as HTMLFormElement;
  const data = new FormData(form);
  const typed = (field: string): string => String(data.get(field) ?? '').trim();
  const values: Record<string, number | null> = {};
  for (const field of ['low', 'typical', 'high']) {
    const reading = readOptionalNumber(typed(field));
    if (!reading.ok) return fail(form, reading.message, field);
    values[field] = reading.value;
  }
  const refusal = await patchProduct(product.id, {
    figures: {
      [name]: {
        low: values.low,
        typical: values.typical,
        high: values.high,
        unit: FIGURE_TERMS[name].unit,
        basis: typed('basis'),
        source: typed('source'),
        readOn: typed('readOn') === '' ? null : typed('readOn'),
        note: typed('note') === '' ? null : typed('note'),
      },
    },
  });
  if (refusal === null) leave(name);
  else
    fail(
      form,
      `${refusal.message} ${refusal.wayOut}`,
      /source/i.test(refusal.message) ? 'source' : 'typical',
    );
}

function fail(form: HTMLFormElement, message: string, field: string): void {
  const alert = form.querySelector('.said');
  if (alert !== null) alert.textContent = message;
  for (const input of form.querySelectorAll('input')) input.removeAttribute('aria-invalid');
  const at = form.querySelector<HTMLInputElement>(`[name="${field}"]`);
  at?.setAttribute('aria-invalid', 'true');
  at?.focus();
}

/** Closes the form and leaves the keyboard on the figure's own button. */
function leave(name: ProductFigureName): void {
  setCatalogueView({ figure: null });
  requestAnimationFrame(() =>
    document.querySelector<HTMLElement>(`[data-row="figures/${name}"] button`)?.focus(),
  );
}
