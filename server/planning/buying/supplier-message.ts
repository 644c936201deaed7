import { formatCount } from '../display/format-count.ts';
import { formatMoney } from '../display/format-money.ts';
import type { Product } from '../product.ts';
import type { ProjectSettings } from '../project-input.ts';
import type { BuyingLine, BuyingPlan } from './buying-plan.ts';
import { dateText } from './dates/date-text.ts';

/** A text ready to paste into a message to a supplier. */
export interface SupplierMessageText {
  readonly supplierId: string;
  readonly subject: string;
  readonly text: string;
}

/**
 * What does one write to a supplier: the lines still to be ordered there in whole packs, with sizes?
 *
 * @param buying what is to be ordered, by supplier
 * @param supplierId empty for the lines without a supplier
 * @param prices whether to name the prices of the catalogue; most suppliers are to name their own
 * @param settings name of the project and its currency
 * @param products of the catalogue, for the names of substitutes
 * @returns subject and text; a text that says so when nothing is to be ordered there
 *
 * Source: a wording of ours. Valid range: any. Departures: none.
 * Example: "- Satin topcoat: 2 x quart" and below it the day of need.
 */
export function supplierMessage({
  buying,
  supplierId,
  prices,
  settings,
  products,
}: {
  readonly buying: Pick<BuyingPlan, 'lines' | 'baskets'>;
  readonly supplierId: string;
  readonly prices: boolean;
  readonly settings: Pick<ProjectSettings, 'name' | 'currency'>;
  readonly products: readonly Pick<Product, 'id' | 'name'>[];
}): SupplierMessageText {
  const { currency } = settings;
  const lines = buying.lines.filter(
    (line) => (line.supplierId ?? '') === supplierId && line.toOrder.value !== 0,
  );
  const basket = buying.baskets.find(({ id }) => id === supplierId);
  const goods = basket?.goods.value ?? null;
  const subject = `Order for ${settings.name}`;
  const money = (minor: number | null): string => formatMoney(minor, currency);
  const neededBy = lines.flatMap((line) => line.neededBy ?? []).sort()[0];
  const text = [
    subject,
    '',
    ...(lines.length === 0 ? ['Nothing is to be ordered.'] : lines.map(rowOf)),
    ...(prices && goods !== null ? ['', `Goods: ${money(goods)} before tax and delivery.`] : []),
    ...(lines.length === 0
      ? []
      : [
          '',
          ...(neededBy === undefined ? [] : [`Needed by ${dateText(neededBy)}.`]),
          prices
            ? 'Please confirm the prices and the day of delivery.'
            : 'Please give the price of each line and the day of delivery.',
        ]),
  ].join('\n');
  return { supplierId, subject, text };

  function rowOf({ name, substituteId, packs, toOrder, unit, cost, notes, category }: BuyingLine): string {
    const amounts =
      packs.length === 0
        ? toOrder.value === null
          ? 'amount to follow'
          : `${formatCount(toOrder.value)} ${unit}`
        : packs.map(({ count, label }) => `${formatCount(count)} x ${label}`).join(', ');
    const price = prices && cost.value !== null ? `, ${money(cost.value)} before tax` : '';
    const batch =
      category === 'finish' && notes.some((note) => note.includes('ask for one batch'))
        ? ' (all of one batch, please)'
        : '';
    const bought = products.find(({ id }) => id === substituteId)?.name ?? name;
    return `- ${bought}: ${amounts}${price}${batch}`;
  }
}
