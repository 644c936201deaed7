import type { Catalogue, Product, ProductKind } from '../../server/planning/product.ts';
import type { Choice } from './choice-input.ts';

/** Kinds as people say them, one and many. */
export const KIND_WORDS: Readonly<Record<ProductKind, readonly [one: string, many: string]>> = {
  sheet: ['Sheet', 'Sheets'],
  board: ['Board', 'Boards'],
  banding: ['Edge banding', 'Edge bandings'],
  finish: ['Finish', 'Finishes'],
  thinner: ['Thinner', 'Thinners'],
  abrasive: ['Abrasive', 'Abrasives'],
  glue: ['Glue', 'Glues'],
  filler: ['Filler', 'Fillers'],
  hardware: ['Hardware', 'Hardware'],
  consumable: ['Consumable', 'Consumables'],
};

/**
 * Products to choose from: those of the given kinds that are not retired, by name, in groups when there are several
 * kinds. A product already chosen stays in the list even when it is retired by now.
 */
export function productChoices(
  catalogue: Catalogue,
  kinds: readonly ProductKind[],
  chosenId: string,
  none: string,
  groupOf: (product: Product) => string = (product) => KIND_WORDS[product.kind][1],
): readonly Choice[] {
  const offered = catalogue.products
    .filter((product) => kinds.includes(product.kind) && (!product.retired || product.id === chosenId))
    .sort((a, b) => kinds.indexOf(a.kind) - kinds.indexOf(b.kind) || a.name.localeCompare(b.name));
  const groups = new Set(offered.map(groupOf));
  const list = offered.map((product) => {
    const text = product.retired ? `${product.name} (retired)` : product.name;
    return groups.size > 1
      ? { value: product.id, text, group: groupOf(product) }
      : { value: product.id, text };
  });
  return [{ value: '', text: none }, ...list];
}
