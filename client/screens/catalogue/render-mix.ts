import { html, nothing, type TemplateResult } from 'lit-html';
import type { Catalogue, Product } from '../../../server/planning/product.ts';
import { readNumber } from '../../format/read-number.ts';
import { patchProduct } from './product-requests.ts';

/** Most parts of base or hardener in a mix; the server takes no more. */
const MOST_PARTS = 1000;

/** A two-part finish: what is mixed in, and how much of each by volume. The three are set together. */
export function renderMix(catalogue: Catalogue, product: Product): TemplateResult {
  const { hardenerId, mixBase, mixHardener } = product.choices;
  const hardeners = catalogue.products.filter(
    (one) => one.choices.role === 'hardener' && (!one.retired || one.id === hardenerId),
  );
  return html`<form class="mix" aria-label="Two-part mix" novalidate @submit=${(event: SubmitEvent) => void submit(event, product.id)}>
    <h3 class="group-title">Two-part mix</h3>
    <div class="form-grid">
      <label class="field"
        ><span>Hardener</span>
        <select name="hardenerId">
          <option value="" ?selected=${hardenerId === undefined}>one part, no hardener</option>
          ${hardeners.map(({ id, name }) => html`<option value=${id} ?selected=${id === hardenerId}>${name}</option>`)}
        </select></label
      >
      <label class="field"><span>Parts of base</span><input name="mixBase" inputmode="decimal" autocomplete="off" value=${mixBase ?? ''} /></label>
      <label class="field"
        ><span>Parts of hardener</span><input name="mixHardener" inputmode="decimal" autocomplete="off" value=${mixHardener ?? ''}
      /></label>
      <div class="form-end"><button class="button">Save the mix</button></div>
    </div>
    <p class="said error" role="alert"></p>
    ${hardenerId === undefined ? nothing : html`<p class="aside-words">Cleared together by choosing “one part”.</p>`}
  </form>`;
}

async function submit(event: SubmitEvent, id: string): Promise<void> {
  event.preventDefault();
  const form = event.currentTarget as HTMLFormElement;
  const data = new FormData(form);
  const alert = form.querySelector('.said');
  const say = (message: string): void => {
    if (alert !== null) alert.textContent = message;
  };
  const hardenerId = String(data.get('hardenerId') ?? '');
  if (hardenerId === '') {
    const refusal = await patchProduct(id, {
      choices: { hardenerId: null, mixBase: null, mixHardener: null },
    });
    return say(refusal?.message ?? '');
  }
  const [mixBase, mixHardener] = ['mixBase', 'mixHardener'].map((name) =>
    readNumber(String(data.get(name) ?? ''), { most: MOST_PARTS }),
  );
  if (mixBase === undefined || mixHardener === undefined || !mixBase.ok || !mixHardener.ok)
    return say('Say how many parts of base go with how many parts of hardener, such as 10 and 1.');
  const refusal = await patchProduct(id, {
    choices: { hardenerId, mixBase: mixBase.value, mixHardener: mixHardener.value },
  });
  say(refusal === null ? '' : `${refusal.message} ${refusal.wayOut}`);
}
