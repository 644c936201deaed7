import { formatMoney } from '../display/format-money.ts';
import { figure } from '../figure.ts';
import type { BuyLine } from '../plan-output.ts';
import type { Product, Supplier } from '../product.ts';
import type { ProjectInput } from '../project-input.ts';
import type { BuyingLine, OrderPack, SupplierChoiceResult } from './buying-plan.ts';
import { dateText } from './dates/date-text.ts';
import { expectedOn } from './dates/expected-on.ts';
import type { NeededBy } from './dates/needed-by.ts';
import { orderBy } from './dates/order-by.ts';
import { urgency } from './dates/urgency.ts';
import type { LineAmounts } from './line-amounts.ts';
import { lineState } from './line-state.ts';
import { lineSupplier } from './line-supplier.ts';
import { packsCost } from './packs-cost.ts';
import { pricedPacks } from './priced-packs.ts';
import { chooseSuppliers } from './suppliers/choose-suppliers.ts';
import type { LineOffer } from './suppliers/line-offers.ts';
import { termsIn } from './suppliers/terms-in.ts';
import { taxOnLine } from './tax-on-line.ts';

/** A line whose supplier is not chosen yet. */
export interface OpenLine {
  readonly line: BuyLine;
  /** Null for a line added by hand that is not in the catalogue. */
  readonly product: Product | null;
  readonly amounts: LineAmounts;
  readonly offers: readonly LineOffer[];
  /** Of a line without a product: what is to be ordered. */
  readonly extraPacks: readonly OrderPack[] | null;
}

/**
 * From whom is each line ordered, until when, and at what cost?
 *
 * @param lines with their offers; a line without a known price goes where others are ordered anyway
 * @param today YYYY-MM-DD
 * @returns lines in their order, and what the choice comes to in whole minor units without tax
 *
 * Source: `chooseSuppliers`, `orderBy`; nothing is computed here. Valid range: any. Departures: none.
 */
export function placeLines({
  lines,
  input,
  neededBy,
  today,
}: {
  readonly lines: readonly OpenLine[];
  readonly input: ProjectInput;
  readonly neededBy: (line: BuyLine) => NeededBy;
  readonly today: string;
}): { readonly lines: readonly BuyingLine[]; readonly choice: SupplierChoiceResult } {
  const { settings, catalogue, extras } = input;
  const { currency } = settings;
  const taxPercent = settings.taxPercent;
  const taxFits = taxPercent !== null && taxPercent >= 0 && taxPercent <= 100;
  const daysOff = new Set(input.daysOff.map(({ date }) => date.trim()));
  const suppliers = new Map(catalogue.suppliers.map((supplier) => [supplier.id, supplier]));
  const asked = lines.map((open) => ({ id: open.line.id, offers: pricedOffers(open) }));
  const choice = chooseSuppliers({
    lines: asked,
    terms: catalogue.suppliers.map((supplier) => termsIn(supplier, currency)),
  });
  const used = new Set(asked.flatMap(({ offers }, at) => offers[choice.chosen[at] ?? -1]?.supplierId ?? []));
  return {
    lines: lines.map((open, at) => placed(open, asked[at]?.offers[choice.chosen[at] ?? -1]?.supplierId)),
    choice: choiceFigures(),
  };

  function pricedOffers({ line, offers, amounts, extraPacks }: OpenLine) {
    if (amounts.toOrder.value === 0 || amounts.toOrder.value === null) return [];
    if (extraPacks !== null) {
      const costMinor = extraPacks[0]?.lineMinor ?? null;
      return costMinor === null ? [] : [{ supplierId: extraSupplier(line), costMinor }];
    }
    return offers.flatMap(({ supplierId, costMinor }) =>
      costMinor === null ? [] : [{ supplierId, costMinor }],
    );
  }

  function extraSupplier({ id }: BuyLine): string {
    const named = extras.find((extra) => `extra-${extra.id}` === id)?.supplierId ?? '';
    return suppliers.has(named) ? named : '';
  }

  function placed(open: OpenLine, chosenId: string | undefined): BuyingLine {
    const { line, product, amounts, offers, extraPacks } = open;
    const toOrder = amounts.toOrder.value;
    const nothing = toOrder === 0;
    const offer = nothing
      ? undefined
      : (offers.find(({ supplierId }) => supplierId === chosenId) ??
        offers.find(({ supplierId }) => used.has(supplierId)) ??
        offers[0]);
    const chosenPacks = offer?.packs ?? [];
    const several = new Set(chosenPacks.map(({ pack }) => pack.supplierId)).size > 1;
    const from = extraPacks !== null ? extraSupplier(line) : (offer?.supplierId ?? '');
    const supplier = suppliers.get(from) ?? null;
    const packs = extraPacks ?? orderPacks(chosenPacks, offer?.product.id ?? line.productId);
    const costKnown = nothing || packs.length > 0;
    const cost = costOf(packs, chosenPacks, costKnown);
    const need = neededBy(line);
    const due = nothing
      ? {
          date: null,
          working: [
            `Needed ${need.date === null ? '' : `on ${dateText(need.date)}`}: ${need.why}`.replace(
              'Needed :',
              'Needed:',
            ),
            'Nothing is to be ordered.',
          ],
        }
      : orderBy({ neededBy: need.date, why: need.why, supplier, daysOff });
    return {
      id: line.id,
      productId: line.productId,
      name: line.name,
      category: line.category,
      unit: line.unit,
      need: amounts.need,
      onHand: amounts.onHand,
      ordered: amounts.ordered,
      received: amounts.received,
      toOrder: amounts.toOrder,
      packs,
      cost,
      tax: figure(
        !taxFits || cost.value === null ? null : taxOnLine({ lineMinor: cost.value, taxPercent }),
        'minor',
        {
          rule: 'tax = cost x rate, rounded half up',
          inputs: [
            { name: 'cost', value: cost.value, unit: 'minor', from: `buying/lines/${line.id}/cost` },
            {
              name: 'tax rate',
              value: taxFits ? taxPercent : null,
              unit: 'percent',
              source: 'project setting',
            },
          ],
        },
      ),
      supplierId: supplier?.id ?? null,
      supplierName: supplier?.name ?? '',
      substituteId: offer !== undefined && offer.product.id !== line.productId ? offer.product.id : null,
      state: lineState(toOrder, amounts.ordered.value ?? 0, amounts.received.value ?? 0, amounts.open),
      neededBy: need.date,
      orderBy: due.date,
      orderByWorking: due.working,
      urgency: nothing ? 'none' : urgency(due.date, need.date, today),
      notes: [
        ...(offer !== undefined && product !== null && offer.product.id !== product.id
          ? [`${offer.product.name} is bought in its place, as you allow, for it comes cheaper.`]
          : []),
        ...(several
          ? [
              'No one supplier has all sizes of the cutting plan, so no delivery is reckoned for it.',
              ...lineSupplier(chosenPacks, catalogue).notes,
            ]
          : []),
        ...dearerHere(offer, offers),
        ...(nothing ? [] : tooLate(open, supplier, due.date, need)),
        ...amounts.notes,
        ...line.notes.filter((note) => !isSupplierNote(note, line)),
      ],
    };
  }

  /** Where it would be cheaper by itself, for the choice is for all lines together. */
  function dearerHere(offer: LineOffer | undefined, offers: readonly LineOffer[]): readonly string[] {
    const cost = offer?.costMinor ?? null;
    const least = offers.reduce<LineOffer | undefined>(
      (best, one) =>
        one.costMinor !== null && (best?.costMinor == null || one.costMinor < best.costMinor) ? one : best,
      undefined,
    );
    if (cost === null || least?.costMinor == null || least.costMinor >= cost) return [];
    const name = suppliers.get(least.supplierId)?.name ?? 'a supplier without a name';
    return [
      `By itself it costs ${formatMoney(cost - least.costMinor, currency)} less at ${name}; ordered here, delivery and surcharges come to less in all.`,
    ];
  }

  /** When it would be here, and who else could still bring it in time, where the last day to order is over. */
  function tooLate(
    { offers }: OpenLine,
    supplier: Supplier | null,
    due: string | null,
    need: NeededBy,
  ): readonly string[] {
    if (due === null || due >= today) return [];
    const here = expectedOn(today, supplier, daysOff);
    return [
      ...(here === null ? [] : [`Ordered today it should be here on ${dateText(here)}.`]),
      ...offers.flatMap(({ supplierId }) => {
        const other = suppliers.get(supplierId) ?? null;
        const date = orderBy({ neededBy: need.date, why: '', supplier: other, daysOff }).date;
        return other !== null && date !== null && date >= today
          ? [`${other.name} could still bring it in time: order there by ${dateText(date)}.`]
          : [];
      }),
    ];
  }

  function orderPacks(chosen: LineOffer['packs'], productId: string | null): readonly OrderPack[] {
    return pricedPacks(chosen, currency).map(({ id, label, amount, count, priceMinor, lineMinor }) => ({
      packId: id,
      productId,
      label,
      amount,
      count,
      priceMinor,
      lineMinor,
    }));
  }

  function costOf(packs: readonly OrderPack[], chosen: LineOffer['packs'], known: boolean) {
    if (!known)
      return figure(null, 'minor', {
        rule: 'cost = sum of packs x price, without tax',
        inputs: [],
        notes: ['Not known; the problems say why.'],
      });
    if (chosen.length > 0) return packsCost(chosen, currency);
    const unpriced = packs.some(({ lineMinor }) => lineMinor === null);
    return figure(
      unpriced ? null : packs.reduce((sum, { lineMinor }) => sum + (lineMinor ?? 0), 0),
      'minor',
      {
        rule: 'cost = sum of packs x price, without tax',
        inputs: packs.map(({ label, count, lineMinor }) => ({
          name: `${count} x ${label}`,
          value: lineMinor,
          unit: 'minor',
        })),
        ...(unpriced ? { notes: ['Its price is not known.'] } : {}),
      },
    );
  }

  function choiceFigures(): SupplierChoiceResult {
    const { totalMinor, boundMinor, proven, lineByLineMinor } = choice;
    const open = lines.filter(({ amounts }) => amounts.toOrder.value !== 0).length;
    const priced = asked.filter(({ offers }) => offers.length > 0).length;
    const notes = [
      ...(priced < open ? [`At least: ${open - priced} of ${open} lines have no known cost.`] : []),
      ...unknownDelivery([...used]),
    ];
    const minor = (
      value: number,
      rule: string,
      inputs: readonly (readonly [name: string, value: number, from?: string])[],
      more: readonly string[],
    ) =>
      figure(value, 'minor', {
        rule,
        inputs: inputs.map(([name, of, from]) => ({
          name,
          value: of,
          unit: 'minor',
          ...(from === undefined ? {} : { from }),
        })),
        ...(more.length === 0 ? {} : { notes: more }),
      });
    return {
      total: minor(
        totalMinor,
        'least total = goods + delivery + surcharges over every choice of one supplier per line, without tax',
        [
          ['each line where it is cheapest, charges included', lineByLineMinor, 'buying/choice/lineByLine'],
          ['saved by choosing together', lineByLineMinor - totalMinor],
        ],
        [
          proven ? 'Proven: no choice costs less.' : 'Not proven: the search was cut short.',
          'Nothing is bought beyond the need for the sake of free delivery.',
          ...notes,
        ],
      ),
      bound: minor(boundMinor, 'no choice of suppliers costs less', [], notes),
      proven,
      lineByLine: minor(
        lineByLineMinor,
        'goods each from where they are cheapest + delivery + surcharges, without tax',
        [],
        notes,
      ),
    };
  }

  function unknownDelivery(ids: readonly string[]): readonly string[] {
    const unknown = ids
      .map((id) => suppliers.get(id))
      .filter((one): one is Supplier => one !== undefined && !termsIn(one, currency).deliveryKnown);
    return unknown.length === 0
      ? []
      : [
          `The delivery charge of ${unknown.map(({ name }) => name).join(', ')} is not known and counts as none.`,
        ];
  }
}

/** Which supplier a pack of the plan would come from: the buy list has chosen anew. */
function isSupplierNote(note: string, { packs }: BuyLine): boolean {
  return packs.some(({ count, label }) => note.startsWith(`${count} x ${label} from `));
}
