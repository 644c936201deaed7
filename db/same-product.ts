import type { Product } from '../server/planning/product.ts';

/**
 * Do two products say the same? Compared is what a plan is made from and a buyer reads: everything but id, short
 * name, origin and whether it is retired. A note that is null and one that is left out are the same.
 */
export function sameProduct(one: Product, other: Product): boolean {
  return contentOf(one) === contentOf(other);
}

function contentOf({ id, shortName, origin, retired, ...content }: Product): string {
  return JSON.stringify(content, (_key, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(
          Object.entries(value)
            .filter(([, inner]) => inner !== null)
            .toSorted(([left], [right]) => (left < right ? -1 : 1)),
        )
      : value,
  );
}
