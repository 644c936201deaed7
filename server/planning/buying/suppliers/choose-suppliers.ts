import { MOST_CHOICES, MOST_SUPPLIERS } from '../constants.ts';
import { type SupplierTerms, supplierCharges } from './supplier-charges.ts';

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

/** Offers of one line within the suppliers that are open: supplier index and cost. */
type Offer = readonly [supplier: number, costMinor: number, index: number];

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
  const suppliers = ids.map((id) => terms.find((one) => one.id === id) ?? freeOf(id));
  const jobs = lines.map(({ offers }) =>
    offers.map(({ supplierId, costMinor }, index): Offer => [ids.indexOf(supplierId), costMinor, index]),
  );
  const real = jobs.filter((offers) => offers.length > 0);
  const cheapest = real.map(cheapestOf);
  const lineByLineMinor = totalOf(cheapest, suppliers);
  let best = { total: lineByLineMinor, offers: cheapest };
  let looked = 0;

  const sets = openSets(real, suppliers);
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
    totalMinor: best.total,
    boundMinor: Math.min(best.total, Math.ceil(unlooked - DUST)),
    proven: unlooked >= best.total,
    lineByLineMinor,
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

/** Lines not assigned yet: what they cost at least, and what they can bring each supplier. */
interface Rest {
  readonly leastMinor: number;
  /** Goods that fall to each supplier when every line goes where it is cheapest. */
  readonly fallMinor: readonly number[];
  /** Per supplier the other lines it could have: goods and cost beyond the cheapest, best value first. */
  readonly more: readonly (readonly (readonly [goodsMinor: number, extraMinor: number])[])[];
}

function restOf(lines: readonly (readonly Offer[])[], count: number): Rest {
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

/** Per open supplier the least it can still cost beyond the goods at their cheapest. */
function leastCharges(
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
      if (target !== null && target > have && least > 0)
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

/** Every set of suppliers that has all lines, by the least it can cost, then by how few they are. */
function openSets(
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

function totalOf(offers: readonly Offer[], suppliers: readonly SupplierTerms[]): number {
  const goods = new Map<number, number>();
  for (const [supplier, cost] of offers) goods.set(supplier, (goods.get(supplier) ?? 0) + cost);
  let total = 0;
  for (const [supplier, sum] of goods) total += sum + chargesOf(suppliers[supplier] as SupplierTerms, sum);
  return total;
}

function chargesOf(terms: SupplierTerms, goodsMinor: number): number {
  const { deliveryMinor, surchargeMinor } = supplierCharges(terms, goodsMinor);
  return deliveryMinor + surchargeMinor;
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

function bits(mask: number): number {
  let count = 0;
  for (let rest = mask; rest > 0; rest &= rest - 1) count++;
  return count;
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
