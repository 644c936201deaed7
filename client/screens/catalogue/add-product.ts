import { html, type TemplateResult } from 'lit-html';
import type { ProductKind } from '../../../server/planning/product.ts';
import { KIND_WORDS } from '../../fields/products-of.ts';
import { openDialog } from '../../shell/open-dialog.ts';
import { catalogueView, openProduct } from './catalogue-view.ts';
import { addProduct } from './product-requests.ts';

/** Asks for the name and kind of a product of one's own; everything else is filled in on its page. */
export function askForNewProduct(): void {
  const { kind } = catalogueView();
  openDialog('Add a product', (close) => form(kind, close));
}

function form(chosen: ProductKind | '', close: () => void): TemplateResult {
  return html`<form method="dialog" @submit=${(event: SubmitEvent) => void create(event, close)}>
    <h2>Add a product</h2>
    <label class="field"
      ><span>Name</span><input name="name" required maxlength="200" autocomplete="off" placeholder="Birch plywood 21 mm" />
      <small>With the size that sets it apart.</small></label
    >
    <label class="field">
      <span>Kind</span>
      <select name="kind">
        ${(Object.keys(KIND_WORDS) as ProductKind[]).map(
          (kind) => html`<option value=${kind} ?selected=${kind === chosen}>${KIND_WORDS[kind][0]}</option>`,
        )}
      </select>
    </label>
    <label class="field"
      ><span>Short name</span><input name="shortName" maxlength="60" autocomplete="off" placeholder="birch 21" />
      <small>Shown in the cells of the part list; made from the name when left empty.</small></label
    >
    <p class="said error" role="alert"></p>
    <div class="actions">
      <button type="button" class="button" @click=${close}>Cancel</button>
      <button class="button primary">Add product</button>
    </div>
  </form>`;
}

async function create(event: SubmitEvent, close: () => void): Promise<void> {
  event.preventDefault();
  const target = event.currentTarget as HTMLFormElement;
  const typed = (name: string): string => String(new FormData(target).get(name) ?? '').trim();
  const shortName = typed('shortName');
  const { product, refusal } = await addProduct({
    name: typed('name'),
    kind: typed('kind') as ProductKind,
    ...(shortName === '' ? {} : { shortName }),
  });
  if (product !== null) {
    close();
    openProduct(product.id);
    return;
  }
  const alert = target.querySelector('.said');
  if (alert !== null && refusal !== null) alert.textContent = `${refusal.message} ${refusal.wayOut}`;
}
