import type { Product, ProductKind } from '../../../server/planning/product.ts';

export interface ProductFilter {
  readonly search: string;
  readonly kind: ProductKind | '';
  /** Retired products are listed too. */
  readonly retired: boolean;
}

/**
 * The products a search finds: every word typed must begin a word of the name, the short name, the species, the
 * colour or the grit; "18" finds "Birch plywood 18 mm" and not the grit 180.
 */
export function matchingProducts(products: readonly Product[], filter: ProductFilter): readonly Product[] {
  const wanted = wordsOf(filter.search);
  return products.filter((product) => {
    if (filter.kind !== '' && product.kind !== filter.kind) return false;
    if (product.retired && !filter.retired) return false;
    const { name, shortName, choices } = product;
    const words = wordsOf(
      `${name} ${shortName} ${choices.species ?? ''} ${choices.colour ?? ''} ${choices.role ?? ''}`,
    );
    return wanted.every((word) =>
      words.some((have) => (/^\d+$/.test(word) ? have === word : have.startsWith(word))),
    );
  });
}

function wordsOf(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}/.]+/u)
    .filter((word) => word !== '');
}
