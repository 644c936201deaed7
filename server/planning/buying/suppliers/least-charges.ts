import { type SupplierTerms, supplierCharges } from './supplier-charges.ts';

/** Offers of one line within the suppliers that are open: supplier index and cost. */
export type Offer = readonly [supplier: number, costMinor: number, index: number];

/** Lines not assigned yet: what they cost at least, and what they can bring each supplier. */
export interface Rest {
  readonly leastMinor: number;
  /** Goods that fall to each supplier when every line goes where it is cheapest. */
  readonly fallMinor: readonly number[];
  /** Per supplier the other lines it could have: goods and cost beyond the cheapest, best value first. */
  readonly more: readonly (readonly (readonly [goodsMinor: number, extraMinor: number])[])[];
}

/** Sums up lines that are not assigned yet, for `count` suppliers. A definition. */
export function restOf(lines: readonly (readonly Offer[])[], count: number): Rest {
  const fall = new Array<number>(count).fill(0);
  const more: [number, number][][] = Array.from({ length: count }, () => []);
  let leastMinor = 0;
  for (const offers of lines) {
    const [at, least] = offers[0] as Offer;
    leastMinor += least;
    fall[at] = (fall[at] ?? 0) + least;
    for (const [supplier, cost] of offers)
      if (supplier !== at && cost > 0) more[supplier]?.push([cost, cost - least]);
  }
  for (const list of more) list.sort((one, other) => one[1] * other[0] - other[1] * one[0]);
  return { leastMinor, fallMinor: fall, more };
}

/**
 * What do delivery and surcharges come to at least, with what it takes beyond the cheapest costs to lower them?
 *
 * @param open bits of the suppliers ordered from
 * @param goods assigned to each already, whole minor units
 * @param rest what can still be assigned
 * @returns minor units, a fraction at times. Per supplier the least of: the charges on what falls to it by itself, and for each
 *   threshold the charges there plus what it costs at least to bring the goods missing (a fractional knapsack). A line counts for
 *   one supplier alone, so these add up; and goods that go elsewhere only make more missing.
 *
 * Source: Dantzig, "Discrete-variable extremum problems", 1957, for the knapsack (from memory). Valid range: any. Departures:
 * none.
 */
export function leastCharges(
  open: number,
  goods: readonly number[],
  { fallMinor, more }: Rest,
  suppliers: readonly SupplierTerms[],
): number {
  let sum = 0;
  for (let at = 0; at < suppliers.length; at++) {
    if (!(open & (1 << at))) continue;
    const terms = suppliers[at] as SupplierTerms;
    const have = (goods[at] ?? 0) + (fallMinor[at] ?? 0);
    let least = chargesOf(terms, have);
    for (const target of [terms.freeFromMinor, terms.minimumMinor])
      if (target !== null && target > have)
        least = Math.min(least, chargesOf(terms, target) + extraFor(target - have, more[at] ?? []));
    sum += least;
  }
  return sum;
}

function extraFor(gap: number, more: readonly (readonly [number, number])[]): number {
  let open = gap;
  let extra = 0;
  for (const [goods, beyond] of more) {
    if (goods >= open) return extra + (beyond * open) / goods;
    open -= goods;
    extra += beyond;
  }
  return Number.POSITIVE_INFINITY;
}

/** Delivery and surcharge together, and one for the order itself; see `chooseSuppliers`. A definition. */
export function chargesOf(terms: SupplierTerms, goodsMinor: number): number {
  const { deliveryMinor, surchargeMinor } = supplierCharges(terms, goodsMinor);
  return deliveryMinor + surchargeMinor + 1;
}
