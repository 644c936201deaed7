import type { Product } from '../server/planning/product.ts';
import { canonicalJson } from './canonical-json.ts';

/**
 * Do two products say the same? Compared is what a plan is made from and a buyer reads: everything but id, short
 * name, origin and whether it is retired. A note that is null and one that is left out are the same.
 */
export function sameProduct(one: Product, other: Product): boolean {
  return contentOf(one) === contentOf(other);
}

function contentOf({ id, shortName, origin, retired, ...content }: Product): string {
  return canonicalJson(content);
}
