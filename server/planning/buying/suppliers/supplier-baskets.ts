import { formatMoney } from '../../display/format-money.ts';
import { figure } from '../../figure.ts';
import { sumFigure } from '../../finish/sum-figure.ts';
import type { Supplier } from '../../product.ts';
import type { BuyingLine, SupplierBasket } from '../buying-plan.ts';
import { groupedBy } from '../grouped-by.ts';
import { taxOnLine } from '../tax-on-line.ts';
import { supplierCharges } from './supplier-charges.ts';
import { termsIn } from './terms-in.ts';

/**
 * What goes into one order to each supplier, and what does it come to?
 *
 * total = goods + delivery + surcharge + tax, each rounded on its own line
 *
 * @param lines with what is still to be ordered; the others are left out
 * @param taxPercent on goods and charges; null when not said, then totals are before tax
 * @returns a basket per supplier, the earliest day to order first; the one without an id holds lines without a supplier. Whole
 *   minor units.
 *
 * Source: definition; tax per line as in `taxOnLine`. Valid range: any. Departures: none.
 * Example: goods 48.00, delivery 9.00, tax 20 %: 9.60 + 1.80 tax, 68.40 in all.
 */
export function supplierBaskets(
  lines: readonly BuyingLine[],
  suppliers: readonly Supplier[],
  currency: string,
  taxPercent: number | null,
): readonly SupplierBasket[] {
  const wanted = lines.filter(({ toOrder }) => toOrder.value !== 0);
  const groups = groupedBy(wanted, ({ supplierId }) => supplierId ?? '');
  return [...groups]
    .map(([id, own]) =>
      basketOf(
        id,
        own,
        suppliers.find((one) => one.id === id),
      ),
    )
    .sort((one, other) =>
      (one.orderBy ?? '9999') < (other.orderBy ?? '9999') ? -1 : one.orderBy === other.orderBy ? 0 : 1,
    );

  function basketOf(id: string, own: readonly BuyingLine[], supplier: Supplier | undefined): SupplierBasket {
    const path = `buying/baskets/${id}`;
    const unknown = own.filter(({ cost }) => cost.value === null).length;
    const atLeast = unknown === 0 ? [] : [`At least: ${unknown} of ${own.length} lines have no known cost.`];
    const goods = sumFigure({
      rule: 'goods = sum of the lines, without tax',
      unit: 'minor',
      noun: 'lines',
      summands: own.map((line) => ({
        name: line.name,
        value: line.cost.value,
        from: `buying/lines/${line.id}/cost`,
      })),
      notes: atLeast,
    });
    const sum = goods.value ?? 0;
    const terms = supplier === undefined ? null : termsIn(supplier, currency);
    const charges = terms === null ? null : supplierCharges(terms, sum);
    const delivery = terms?.deliveryKnown ? (charges?.deliveryMinor ?? 0) : null;
    const surcharge = charges?.surchargeMinor ?? 0;
    const taxOn = (minor: number | null): number | null =>
      taxPercent === null || minor === null ? null : taxOnLine({ lineMinor: minor, taxPercent });
    const taxes = [
      ...own.map((line) => ({
        name: `tax on ${line.name}`,
        value: line.tax.value,
        from: `buying/lines/${line.id}/tax`,
      })),
      ...(delivery ? [{ name: 'tax on delivery', value: taxOn(delivery) }] : []),
      ...(surcharge > 0 ? [{ name: 'tax on the surcharge', value: taxOn(surcharge) }] : []),
    ];
    const tax =
      taxPercent === null
        ? figure(null, 'minor', {
            rule: 'tax',
            inputs: [],
            notes: ['No tax rate is set; the total is before tax.'],
          })
        : sumFigure({
            rule: 'tax = sum over the lines of (line x rate, rounded half up)',
            unit: 'minor',
            noun: 'lines',
            summands: taxes,
            notes: atLeast,
          });
    const orderDates = own.flatMap(({ orderBy }) => orderBy ?? []).sort();
    const money = (minor: number): string => formatMoney(minor, currency);
    return {
      id,
      name: supplier?.name ?? id,
      lineIds: own.map((line) => line.id),
      goods,
      delivery: figure(delivery, 'minor', {
        rule: 'delivery, once per order; none from the free-delivery amount on',
        inputs: [
          { name: 'goods', value: goods.value, unit: 'minor', from: `${path}/goods` },
          {
            name: 'delivery charge',
            value: terms?.deliveryKnown ? terms.deliveryMinor : null,
            unit: 'minor',
          },
          { name: 'delivered free from', value: terms?.freeFromMinor ?? null, unit: 'minor' },
        ],
        ...(delivery === null
          ? { notes: ['The delivery charge is not known, and is not in the total.'] }
          : {}),
      }),
      surcharge: figure(surcharge, 'minor', {
        rule: 'surcharge on orders below the minimum',
        inputs: [
          { name: 'goods', value: goods.value, unit: 'minor', from: `${path}/goods` },
          { name: 'minimum order', value: terms?.minimumMinor ?? null, unit: 'minor' },
          { name: 'surcharge below it', value: terms?.surchargeMinor ?? null, unit: 'minor' },
        ],
      }),
      tax,
      total: figure(
        goods.value === null ? null : sum + (delivery ?? 0) + surcharge + (tax.value ?? 0),
        'minor',
        {
          rule: 'total = goods + delivery + surcharge + tax',
          inputs: [
            { name: 'goods', value: goods.value, unit: 'minor', from: `${path}/goods` },
            { name: 'delivery', value: delivery, unit: 'minor', from: `${path}/delivery` },
            { name: 'surcharge', value: surcharge, unit: 'minor', from: `${path}/surcharge` },
            { name: 'tax', value: tax.value, unit: 'minor', from: `${path}/tax` },
          ],
          notes: [
            ...(taxPercent === null ? ['Before tax: no tax rate is set.'] : []),
            ...(delivery === null ? ['Without delivery, whose charge is not known.'] : []),
            ...atLeast,
          ],
        },
      ),
      orderBy: orderDates[0] ?? null,
      notes: [
        ...(delivery === null && supplier !== undefined
          ? [`What ${supplier.name} charges for delivery is not known.`]
          : []),
        ...(terms?.freeFromMinor != null && delivery !== null && delivery > 0
          ? [
              `Goods for ${money(terms.freeFromMinor - sum)} more would be delivered free, which saves ${money(delivery)}.`,
            ]
          : []),
        ...(terms?.minimumMinor != null && sum < terms.minimumMinor
          ? [
              surcharge > 0
                ? `Goods for ${money(terms.minimumMinor - sum)} more would reach the minimum order, which saves ${money(surcharge)}.`
                : `The goods are ${money(terms.minimumMinor - sum)} below the minimum order.`,
            ]
          : []),
      ],
    };
  }
}
