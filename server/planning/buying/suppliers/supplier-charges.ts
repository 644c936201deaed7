/** What a supplier adds to the goods of one order, whole minor units without tax. */
export interface SupplierTerms {
  readonly id: string;
  readonly deliveryMinor: number;
  /** Goods of at least this much come without the delivery charge; null where there is no such rule. */
  readonly freeFromMinor: number | null;
  /** Goods of less than this carry the surcharge. */
  readonly minimumMinor: number | null;
  readonly surchargeMinor: number;
}

/**
 * What does a supplier charge beside the goods of one order?
 *
 * @param goodsMinor whole minor units without tax, 0 or more
 * @returns delivery and surcharge, whole minor units without tax
 *
 * Source: definition of the terms. Valid range: any. Departures: none.
 * Example: goods of 48.00, delivery 9.00 free from 50.00, 5.00 more below 40.00: 9.00 and 0.
 */
export function supplierCharges(
  { deliveryMinor, freeFromMinor, minimumMinor, surchargeMinor }: SupplierTerms,
  goodsMinor: number,
): { readonly deliveryMinor: number; readonly surchargeMinor: number } {
  return {
    deliveryMinor: freeFromMinor !== null && goodsMinor >= freeFromMinor ? 0 : deliveryMinor,
    surchargeMinor: minimumMinor !== null && goodsMinor < minimumMinor ? surchargeMinor : 0,
  };
}
