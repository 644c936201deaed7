import { MOST_SUPPLIERS } from '../constants.ts';
import { leastCharges, type Offer, restOf } from './least-charges.ts';
import type { SupplierTerms } from './supplier-charges.ts';

/**
 * Which sets of suppliers have every line between them, and what does each cost at least?
 *
 * @param lines offers of each line, @param suppliers their terms
 * @returns sets as bits, by the least they can cost in minor units, then by how few they are; `complete` is false where there are
 *   more than MOST_SUPPLIERS suppliers, of whom only the first are looked at
 *
 * Source: `leastCharges`. Valid range: any. Departures: none.
 */
export function supplierSets(
  lines: readonly (readonly Offer[])[],
  suppliers: readonly SupplierTerms[],
): {
  readonly list: readonly { readonly open: number; readonly bound: number }[];
  readonly complete: boolean;
} {
  const count = Math.min(suppliers.length, MOST_SUPPLIERS);
  const list: { open: number; bound: number; count: number }[] = [];
  const none = suppliers.map(() => 0);
  for (let open = 1; open < 1 << count; open++) {
    const within = lines.map((offers) =>
      offers.filter(([supplier]) => open & (1 << supplier)).sort((one, other) => one[1] - other[1]),
    );
    if (within.some(({ length }) => length === 0)) continue;
    const rest = restOf(within, suppliers.length);
    list.push({
      open,
      bound: rest.leastMinor + leastCharges(open, none, rest, suppliers),
      count: bits(open),
    });
  }
  list.sort((one, other) => one.bound - other.bound || one.count - other.count);
  return { list, complete: count === suppliers.length };
}

function bits(mask: number): number {
  let count = 0;
  for (let rest = mask; rest > 0; rest &= rest - 1) count++;
  return count;
}
