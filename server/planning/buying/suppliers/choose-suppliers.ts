import { MOST_CHOICES } from '../constants.ts';
import { chargesOf, leastCharges, type Offer, restOf } from './least-charges.ts';
import type { SupplierTerms } from './supplier-charges.ts';
import { supplierSets } from './supplier-sets.ts';

/** One line and what it costs at each supplier that has it, whole minor units without tax; one offer per supplier. */
export interface LineOffers {
  readonly id: string;
  readonly offers: readonly { readonly supplierId: string; readonly costMinor: number }[];
}

export interface SuppliersChoice {
  /** Per line the index of its offer; -1 for a line without offers. */
  readonly chosen: readonly number[];
  /** Goods, delivery and surcharges, whole minor units without tax. */
  readonly totalMinor: number;
  /** No choice costs less. */
  readonly boundMinor: number;
  readonly proven: boolean;
  /** Each line where it is cheapest, charges included. */
  readonly lineByLineMinor: number;
}

/** Sums of fractions may be this much off a whole number. */
const DUST = 1e-6;

/**
 * From whom is each line ordered, so that goods, delivery and surcharges together cost least?
 *
 * @param lines costs of the least-cost packs at each supplier; whole lines only, one supplier each
 * @param terms of the suppliers named in the offers; one that is missing charges nothing
 * @param mostChoices partial choices looked at before the search gives up
 * @returns the choice of least total, of equal ones the one with the fewest orders
 *
 * Method: every set of suppliers to order from is bounded below and looked at in the order of its bound; within a set
 * the lines are assigned depth first. The bound of a partial choice: assigned lines at their cost, the others each at
 * its cheapest, and per supplier the least of (charges left after reaching a threshold + what it takes at least beyond
 * the cheapest costs to bring goods enough there, as a fractional knapsack). A line counts for one supplier alone, so
 * these extras add up. Exact up to MOST_SUPPLIERS suppliers and within mostChoices; else `proven` is false and the
 * bound is the least of what was not looked at.
 *
 * Source: definition; fractional knapsack bound after Dantzig, "Discrete-variable extremum problems", 1957 (from
 * memory). Valid range: costs of whole minor units. Departures: nothing is ever bought beyond the need to reach a threshold:
 * no shelf of dead cans for the sake of free delivery. The basket says how little is missing instead.
 * Example: 20.00 at A and 22.00 at B, 30.00 at B only, delivery 6.00 at A and 4.00 at B: both at B, 56.00.
 */
export function chooseSuppliers({
  lines,
  terms,
  mostChoices = MOST_CHOICES,
}: {
  readonly lines: readonly LineOffers[];
  readonly terms: readonly SupplierTerms[];
  readonly mostChoices?: number;
}): SuppliersChoice {
  check(lines);
  const ids = [...new Set(lines.flatMap(({ offers }) => offers.map(({ supplierId }) => supplierId)))];
  // Among equal totals the fewest orders: all money counts `scale` times, and each order one on top.
  const scale = ids.length + 1;
  const suppliers = ids.map((id) => scaled(terms.find((one) => one.id === id) ?? freeOf(id), scale));
  const jobs = lines.map(({ offers }) =>
    offers.map(
      ({ supplierId, costMinor }, index): Offer => [ids.indexOf(supplierId), costMinor * scale, index],
    ),
  );
  const real = jobs.filter((offers) => offers.length > 0);
  const cheapest = real.map(cheapestOf);
  const lineByLine = totalOf(cheapest, suppliers);
  let best = { total: lineByLine, offers: cheapest };
  let looked = 0;

  const sets = supplierSets(real, suppliers);
  let unlooked = Number.POSITIVE_INFINITY;
  for (const { bound, open } of sets.list) {
    if (cannotBeat(bound)) break;
    searchWithin(open);
    if (looked > mostChoices) {
      unlooked = bound;
      break;
    }
  }
  if (!sets.complete) unlooked = Math.min(unlooked, sumOfLeast(real));
  let at = 0;
  return {
    chosen: jobs.map((offers) => (offers.length === 0 ? -1 : (best.offers[at++]?.[2] ?? -1))),
    totalMinor: Math.floor(best.total / scale),
    boundMinor: Math.min(
      Math.floor(best.total / scale),
      Math.max(0, Math.ceil((unlooked - ids.length) / scale - DUST)),
    ),
    proven: unlooked >= best.total,
    lineByLineMinor: Math.floor(lineByLine / scale),
  };

  /** Totals are whole: a bound above the best less one cannot lead to a better one. */
  function cannotBeat(bound: number): boolean {
    return bound > best.total - 1 + DUST;
  }

  /** Improves `best` by what these suppliers can do. */
  function searchWithin(open: number): void {
    const choices = real.map((offers) =>
      offers.filter(([supplier]) => open & (1 << supplier)).toSorted((one, other) => one[1] - other[1]),
    );
    const fixed = choices.filter(({ length }) => length === 1);
    const free = choices
      .filter(({ length }) => length > 1)
      .toSorted((one, other) => regret(other) - regret(one));
    const order = [...fixed, ...free];
    const goods = suppliers.map(() => 0);
    for (const [offer] of fixed) if (offer) goods[offer[0]] = (goods[offer[0]] ?? 0) + offer[1];
    const spent = fixed.reduce((sum, [offer]) => sum + (offer?.[1] ?? 0), 0);
    const rests = free.map((_, at) => restOf(free.slice(at), suppliers.length));
    const taken: Offer[] = fixed.map(([offer]) => offer as Offer);
    visit(0, spent);

    function visit(at: number, cost: number): void {
      if (++looked > mostChoices) return;
      const rest = rests[at];
      if (rest === undefined) {
        const total = totalOf(taken, suppliers);
        if (total < best.total) best = { total, offers: inLineOrder() };
        return;
      }
      if (cannotBeat(cost + rest.leastMinor + leastCharges(open, goods, rest, suppliers))) return;
      for (const offer of free[at] ?? []) {
        const [supplier, costMinor] = offer;
        goods[supplier] = (goods[supplier] ?? 0) + costMinor;
        taken.push(offer);
        visit(at + 1, cost + costMinor);
        taken.pop();
        goods[supplier] = (goods[supplier] ?? 0) - costMinor;
      }
    }

    function inLineOrder(): Offer[] {
      return choices.map((own) => taken[order.indexOf(own)] as Offer);
    }
  }
}

function totalOf(offers: readonly Offer[], suppliers: readonly SupplierTerms[]): number {
  const goods = new Map<number, number>();
  for (const [supplier, cost] of offers) goods.set(supplier, (goods.get(supplier) ?? 0) + cost);
  let total = 0;
  for (const [supplier, sum] of goods) total += sum + chargesOf(suppliers[supplier] as SupplierTerms, sum);
  return total;
}

function cheapestOf(offers: readonly Offer[]): Offer {
  return offers.reduce((least, offer) => (offer[1] < least[1] ? offer : least));
}

function sumOfLeast(lines: readonly (readonly Offer[])[]): number {
  return lines.reduce((sum, offers) => sum + cheapestOf(offers)[1], 0);
}

function regret(offers: readonly Offer[]): number {
  return (offers[1]?.[1] ?? 0) - (offers[0]?.[1] ?? 0);
}

function scaled(terms: SupplierTerms, scale: number): SupplierTerms {
  const { id, deliveryMinor, freeFromMinor, minimumMinor, surchargeMinor } = terms;
  return {
    id,
    deliveryMinor: deliveryMinor * scale,
    freeFromMinor: freeFromMinor === null ? null : freeFromMinor * scale,
    minimumMinor: minimumMinor === null ? null : minimumMinor * scale,
    surchargeMinor: surchargeMinor * scale,
  };
}

function freeOf(id: string): SupplierTerms {
  return { id, deliveryMinor: 0, freeFromMinor: null, minimumMinor: null, surchargeMinor: 0 };
}

function check(lines: readonly LineOffers[]): void {
  for (const { id, offers } of lines) {
    for (const { costMinor } of offers)
      if (!(Number.isSafeInteger(costMinor) && costMinor >= 0))
        throw new RangeError(
          `chooseSuppliers: line ${id} needs a cost of whole minor units of at least 0, got ${costMinor}`,
        );
    if (new Set(offers.map(({ supplierId }) => supplierId)).size < offers.length)
      throw new RangeError(`chooseSuppliers: line ${id} has two offers of one supplier`);
  }
}
