import { figure } from '../figure.ts';
import type { BuyLine } from '../plan-output.ts';
import type { Product, Supplier } from '../product.ts';
import type { ProjectInput } from '../project-input.ts';
import type { BuyingLine, OrderPack } from './buying-plan.ts';
import { dateText } from './dates/date-text.ts';
import type { NeededBy } from './dates/needed-by.ts';
import { orderBy } from './dates/order-by.ts';
import { urgency } from './dates/urgency.ts';
import type { LineAmounts } from './line-amounts.ts';
import { lineState } from './line-state.ts';
import { lineSupplier } from './line-supplier.ts';
import { dearerHereNotes, tooLateNotes } from './offer-notes.ts';
import { orderCost, orderPacks } from './order-cost.ts';
import type { LineOffer } from './suppliers/line-offers.ts';
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
 * One line of the buy list, ordered from the supplier chosen for it.
 *
 * @param open amounts in the product's unit, and what the suppliers offer
 * @param chosen the offer taken; undefined when nothing is to be ordered, or nobody has it
 * @param supplierId of a line without offers: who it is ordered from
 * @param need its day of need; @param today, daysOff YYYY-MM-DD
 * @param taxPercent on its cost; null when not said
 * @returns the line; costs in whole minor units without tax
 *
 * Source: `orderCost`, `taxOnLine`, `orderBy`, `lineState`; nothing is computed here. Valid range: any. Departures: none.
 */
export function placedLine({
  open,
  chosen,
  supplierId,
  suppliers,
  input,
  need,
  today,
  daysOff,
  taxPercent,
}: {
  readonly open: OpenLine;
  readonly chosen: LineOffer | undefined;
  readonly supplierId: string;
  readonly suppliers: ReadonlyMap<string, Supplier>;
  readonly input: ProjectInput;
  readonly need: NeededBy;
  readonly today: string;
  readonly daysOff: ReadonlySet<string>;
  readonly taxPercent: number | null;
}): BuyingLine {
  const { line, product, amounts, offers, extraPacks } = open;
  const { currency } = input.settings;
  const { need: whole, onHand, ordered, received, toOrder } = amounts;
  const nothing = toOrder.value === 0;
  const supplier = suppliers.get(supplierId) ?? null;
  const chosenPacks = chosen?.packs ?? [];
  const packs = extraPacks ?? orderPacks(chosenPacks, chosen?.product.id ?? line.productId, currency);
  const cost = orderCost(chosenPacks, nothing || packs.length > 0 ? packs : null, currency);
  const due = nothing
    ? { date: null, working: [neededText(need), 'Nothing is to be ordered.'] }
    : orderBy({ neededBy: need.date, why: need.why, supplier, daysOff });
  const substitute = chosen !== undefined && chosen.product.id !== line.productId ? chosen.product : null;
  const choice = { offers, chosen, suppliers };
  return {
    id: line.id,
    productId: line.productId,
    name: line.name,
    category: line.category,
    unit: line.unit,
    need: whole,
    onHand,
    ordered,
    received,
    toOrder,
    packs,
    cost,
    tax: figure(
      taxPercent === null || cost.value === null ? null : taxOnLine({ lineMinor: cost.value, taxPercent }),
      'minor',
      {
        rule: 'tax = cost x rate, rounded half up',
        inputs: [
          { name: 'cost', value: cost.value, unit: 'minor', from: `buying/lines/${line.id}/cost` },
          { name: 'tax rate', value: taxPercent, unit: 'percent', source: 'project setting' },
        ],
      },
    ),
    supplierId: supplier?.id ?? null,
    supplierName: supplier?.name ?? '',
    substituteId: substitute?.id ?? null,
    state: lineState(toOrder.value, ordered.value ?? 0, received.value ?? 0, amounts.open),
    neededBy: need.date,
    orderBy: due.date,
    orderByWorking: due.working,
    urgency: nothing ? 'none' : urgency(due.date, need.date, today),
    notes: [
      ...(substitute !== null && product !== null
        ? [`${substitute.name} is bought in its place, as you allow, for it comes cheaper.`]
        : []),
      ...severalNotes(chosenPacks, input),
      ...dearerHereNotes(choice, currency),
      ...tooLateNotes(choice, supplier, { orderByDate: due.date, neededBy: need.date, today, daysOff }),
      ...amounts.notes,
      ...line.notes.filter((note) => !isSupplierNote(note, line)),
    ],
  };
}

function neededText({ date, why }: NeededBy): string {
  return date === null ? why : `Needed on ${dateText(date)}: ${why}`;
}

function severalNotes(packs: LineOffer['packs'], { catalogue }: ProjectInput): readonly string[] {
  if (new Set(packs.map(({ pack }) => pack.supplierId)).size <= 1) return [];
  return [
    'No one supplier has all sizes of the cutting plan, so no delivery is reckoned for it.',
    ...lineSupplier(packs, catalogue).notes,
  ];
}

/** Which supplier a pack of the plan would come from: the buy list has chosen anew. */
function isSupplierNote(note: string, { packs }: BuyLine): boolean {
  return packs.some(({ count, label }) => note.startsWith(`${count} x ${label} from `));
}
