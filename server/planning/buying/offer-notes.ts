import { formatMoney } from '../display/format-money.ts';
import type { Supplier } from '../product.ts';
import { dateText } from './dates/date-text.ts';
import { expectedOn } from './dates/expected-on.ts';
import { orderBy } from './dates/order-by.ts';
import type { LineOffer } from './suppliers/line-offers.ts';

/** Where a line is ordered, and where else it could be. */
export interface OfferChoice {
  readonly offers: readonly LineOffer[];
  /** Undefined when nothing is ordered. */
  readonly chosen: LineOffer | undefined;
  readonly suppliers: ReadonlyMap<string, Supplier>;
}

/**
 * Is a line cheaper elsewhere by itself? The choice is for all lines together.
 *
 * @param currency ISO 4217 code the project reckons in
 * @returns a sentence with the difference in money; none where it is cheapest as chosen
 *
 * Source: a wording of ours. Valid range: any. Departures: none.
 */
export function dearerHereNotes(
  { offers, chosen, suppliers }: OfferChoice,
  currency: string,
): readonly string[] {
  const cost = chosen?.costMinor ?? null;
  const priced = offers.flatMap(({ supplierId, costMinor }) =>
    costMinor === null ? [] : [{ supplierId, costMinor }],
  );
  const [least] = priced.toSorted((one, other) => one.costMinor - other.costMinor);
  if (cost === null || least === undefined || least.costMinor >= cost) return [];
  const name = suppliers.get(least.supplierId)?.name ?? 'a supplier without a name';
  return [
    `By itself it costs ${formatMoney(cost - least.costMinor, currency)} less at ${name}; ordered here, delivery and surcharges come to less in all.`,
  ];
}

/**
 * When would something be here that is ordered too late, and who else could still bring it in time?
 *
 * @param orderByDate last day to order, @param neededBy day of need, @param today YYYY-MM-DD; null when not known
 * @returns sentences; none where it is not too late
 *
 * Source: `expectedOn`, `orderBy`; a wording of ours. Valid range: any. Departures: none.
 */
export function tooLateNotes(
  { offers, suppliers }: OfferChoice,
  supplier: Supplier | null,
  {
    orderByDate,
    neededBy,
    today,
    daysOff,
  }: {
    readonly orderByDate: string | null;
    readonly neededBy: string | null;
    readonly today: string;
    readonly daysOff: ReadonlySet<string>;
  },
): readonly string[] {
  if (orderByDate === null || orderByDate >= today) return [];
  const here = expectedOn(today, supplier, daysOff);
  return [
    ...(here === null ? [] : [`Ordered today it should be here on ${dateText(here)}.`]),
    ...offers.flatMap(({ supplierId }) => {
      const other = suppliers.get(supplierId) ?? null;
      const { date } = orderBy({ neededBy, why: '', supplier: other, daysOff });
      return other !== null && date !== null && date >= today
        ? [`${other.name} could still bring it in time: order there by ${dateText(date)}.`]
        : [];
    }),
  ];
}
