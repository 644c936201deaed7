import { isPrice } from '../../packs/usable-price.ts';
import type { Supplier } from '../../product.ts';
import type { SupplierTerms } from './supplier-charges.ts';

/**
 * What are a supplier's terms in the project's currency?
 *
 * @param currency ISO 4217 code the project reckons in
 * @returns terms in whole minor units. A charge that is not known, is in another currency or cannot be a price counts as none, and
 *   `deliveryKnown` says so.
 *
 * Source: definition; charges are never converted between currencies, and none is none in all of them. Valid range: any. Departures: none.
 */
export function termsIn(
  supplier: Supplier,
  currency: string,
): SupplierTerms & { readonly deliveryKnown: boolean } {
  const usable = (minor: number | null): number | null =>
    minor !== null && isPrice(minor) && (minor === 0 || supplier.currency === currency) ? minor : null;
  const deliveryMinor = usable(supplier.deliveryMinor);
  return {
    id: supplier.id,
    deliveryMinor: deliveryMinor ?? 0,
    freeFromMinor: usable(supplier.freeDeliveryFromMinor),
    minimumMinor: usable(supplier.minimumOrderMinor),
    surchargeMinor: usable(supplier.surchargeMinor) ?? 0,
    deliveryKnown: deliveryMinor !== null,
  };
}
