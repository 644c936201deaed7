import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { Catalogue, Pack, Product } from '../../../server/planning/product.ts';
import { focusAfterRemoval, focusRow } from '../../fields/focus-row.ts';
import { isoToday } from '../../fields/iso-today.ts';
import { placeKey } from '../../fields/place.ts';
import { addAct, removeButton } from '../../fields/row-acts.ts';
import { stackCell, stackTable } from '../../fields/stack-table.ts';
import type { AppState } from '../../state/store.ts';
import { ownEvidence } from './evidence-words.ts';
import { packFields } from './pack-fields.ts';
import { withNewPack } from './pack-list.ts';
import { patchProduct } from './product-requests.ts';
import { renderEvidence } from './render-evidence.ts';

/** Currency offered for a new pack while no project is open. */
const NO_PROJECT_CURRENCY = 'USD';

/** How a product is sold: sizes, prices before tax, suppliers. */
export function renderPacks(state: AppState, catalogue: Catalogue, product: Product): TemplateResult {
  const currency = state.project?.settings.currency ?? NO_PROJECT_CURRENCY;
  const sheet = product.kind === 'sheet';
  return html`<section class="panel" aria-labelledby="packs-title">
    <header>
      <div>
        <h2 id="packs-title" tabindex="-1" data-at=${placeKey({ table: 'products', id: product.id, field: 'packs' })}>Packs and prices</h2>
        <p>Prices are before tax. The buy list uses packs priced in the project's currency.</p>
      </div>
      ${addAct('packs', 'Add pack', () => void add(product, currency))}
    </header>
    <div class="body flush">
      ${
        product.packs.length === 0
          ? html`<p class="nothing-yet">No pack is known, so it cannot be bought in whole packs yet.</p>`
          : stackTable(
              `Packs of ${product.name}`,
              [
                ['Sold as'],
                ...(sheet
                  ? ([
                      ['Length', 'number'],
                      ['Width', 'number'],
                    ] as const)
                  : ([['Holds', 'number']] as const)),
                ['Price', 'number'],
                ['Currency'],
                ['Supplier'],
                ['Stands on', 'wide'],
                ['Remove', 'acts'],
              ],
              repeat(
                [...product.packs].sort(
                  (a, b) => Number(b.currency === currency) - Number(a.currency === currency),
                ),
                ({ id }) => id,
                (pack) => packRow(state, catalogue, product, pack),
              ),
              { extraClass: 'packs-table' },
            )
      }
    </div>
  </section>`;
}

function packRow(state: AppState, catalogue: Catalogue, product: Product, pack: Pack): TemplateResult {
  const fields = packFields(state, catalogue, product, pack);
  return html`<tr role="row" data-row="packs/${pack.id}">
    ${stackCell('Sold as', fields.label)}
    ${
      product.kind === 'sheet'
        ? html`${stackCell('Length', fields.length, 'number')} ${stackCell('Width', fields.width, 'number')}`
        : stackCell('Holds', fields.amount, 'number')
    }
    ${stackCell('Price', fields.price, 'number')} ${stackCell('Currency', fields.currency)}
    ${stackCell('Supplier', fields.supplier)} ${stackCell('Stands on', renderEvidence(pack))}
    ${stackCell(
      '',
      removeButton(`the pack ${pack.label}`, async (event: Event) => {
        const settle = focusAfterRemoval(event.currentTarget as Element);
        await patchProduct(product.id, { packs: product.packs.filter(({ id }) => id !== pack.id) });
        settle();
      }),
      'acts',
    )}
  </tr>`;
}

async function add(product: Product, currency: string): Promise<void> {
  const packs = withNewPack(product, currency, ownEvidence(isoToday()));
  const refusal = await patchProduct(product.id, { packs });
  if (refusal === null) focusRow('packs', packs.at(-1)?.id ?? null);
}
