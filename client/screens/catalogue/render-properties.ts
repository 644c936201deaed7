import { html, nothing, type TemplateResult } from 'lit-html';
import type { Catalogue, Product } from '../../../server/planning/product.ts';
import { choiceInput } from '../../fields/choice-input.ts';
import { labelled } from '../../fields/labelled.ts';
import { asTyped, textInput } from '../../fields/text-input.ts';
import { readOptionalNumber } from '../../format/read-number.ts';
import { CHOICE_TERMS, choicesOfKind } from './choice-terms.ts';
import { patchProduct } from './product-requests.ts';
import { renderMix } from './render-mix.ts';

/** Names and properties of a product. An empty field is a property not said. */
export function renderProperties(catalogue: Catalogue, product: Product): TemplateResult {
  const mixed = product.kind === 'finish' && product.choices.role !== 'hardener';
  return html`<section class="panel" aria-labelledby="choices-title">
    <header><h2 id="choices-title">Names and properties</h2></header>
    <div class="body">
      <div class="form-grid">
        <div class="form-wide">${words(product, 'name', 'Name')}</div>
        ${words(product, 'shortName', 'Short name')}
        ${choicesOfKind(product.kind).map((name) => property(product, name))}
        <div class="form-all">${words(product, 'note', 'Note')}</div>
      </div>
      ${mixed ? renderMix(catalogue, product) : nothing}
    </div>
  </section>`;
}

function words(product: Product, field: 'name' | 'shortName' | 'note', label: string): TemplateResult {
  const place = { table: 'products', id: product.id, field } as const;
  return labelled(
    place,
    label,
    textInput({
      place,
      label,
      text: product[field] ?? '',
      read: asTyped,
      save: (value) => patchProduct(product.id, { [field]: field === 'note' && value === '' ? null : value }),
      problems: [],
    }),
  );
}

function property(product: Product, name: ReturnType<typeof choicesOfKind>[number]): TemplateResult {
  const { words: label, values, number } = CHOICE_TERMS[name];
  const place = { table: 'products', id: product.id, field: name } as const;
  const stored = product.choices[name];
  const save = (value: string | number | null) =>
    patchProduct(product.id, { choices: { [name]: value === '' ? null : value } });
  if (values !== undefined)
    return labelled(
      place,
      label,
      choiceInput({
        place,
        label,
        value: String(stored ?? ''),
        choices: [
          { value: '', text: 'not said' },
          ...Object.entries(values).map(([value, text]) => ({ value, text })),
        ],
        save,
        problems: [],
      }),
    );
  const shared = { place, label, text: String(stored ?? ''), save, problems: [] };
  return labelled(
    place,
    label,
    number === true
      ? textInput<number | null>({
          ...shared,
          read: (typed) => readOptionalNumber(typed, { least: 8, most: 10_000, whole: true }),
          numeric: true,
        })
      : textInput<string>({ ...shared, read: asTyped }),
  );
}
