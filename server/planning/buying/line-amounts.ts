import { type Figure, figure } from '../figure.ts';
import { COVER_TOLERANCE } from '../packs/constants.ts';
import type { BuyLine } from '../plan-output.ts';
import type { Product } from '../product.ts';
import type { ProjectInput } from '../project-input.ts';
import type { BuyingLine } from './buying-plan.ts';
import type { OrderLineCounts } from './orders/order-line-counts.ts';
import type { CoatUse } from './stock/coat-uses.ts';
import type { ProductStock } from './stock/product-stock.ts';

/** What is known of one product beside its need, in its unit. */
export interface LineAmounts
  extends Pick<BuyingLine, 'need' | 'onHand' | 'ordered' | 'received' | 'toOrder'> {
  /** Still to come. */
  readonly open: number;
  /** Here, or to come, beyond all that is needed. */
  readonly surplus: number;
  readonly notes: readonly string[];
}

/** Of the order lines of one product: packs kept, here and to come, in the product's unit. */
export interface OrderedAmounts {
  readonly kept: number;
  readonly here: number;
  readonly open: number;
}

/** Of a product that may stand in for another: what it has beyond its own need. */
export interface BorrowedAmount {
  readonly name: string;
  readonly amount: number;
  /** Of the amount, what was ordered and is here, and what was ordered and is to come. */
  readonly here: number;
  readonly open: number;
}

/** The order lines of a product summed up in its unit. Definition. */
export function orderedAmounts(
  orderLines: ProjectInput['orderLines'],
  counts: ReadonlyMap<string, OrderLineCounts>,
): OrderedAmounts {
  const sum = (of: 'kept' | 'here' | 'open'): number =>
    orderLines.reduce((total, { id, packAmount }) => total + (counts.get(id)?.[of] ?? 0) * packAmount, 0);
  return { kept: sum('kept'), here: sum('here'), open: sum('open') };
}

/**
 * How much of a product does the whole project need, what of it is there or on its way, and what is still to be ordered?
 *
 * need = as planned + what finished coats took more than reckoned + what was taken by hand
 * to order = (need - used) - what is here and good - what is still to come, not below 0
 *
 * @param line of the plan's buy list; its need may be unknown, then what is to be ordered is too
 * @param stock undefined where there never was any
 * @param uses of finished coats of this product
 * @param borrowed from products the user allows in place of this one, in the product's unit, where they have more than is needed
 * @returns figures in the product's unit
 *
 * Source: definition. Valid range: any. Departures: a shortfall within COVER_TOLERANCE is none.
 * Example: 1.2 L planned, a coat took 0.5 L in place of 0.4 L, one can of 0.946 L came: need 1.3 L, to order 0.354 L.
 */
export function lineAmounts({
  line,
  product,
  stock,
  ordered,
  uses,
  borrowed,
}: {
  readonly line: Pick<BuyLine, 'id' | 'need'>;
  readonly product: Pick<Product, 'unit'>;
  readonly stock: ProductStock | undefined;
  readonly ordered: OrderedAmounts;
  readonly uses: readonly CoatUse[];
  readonly borrowed: readonly BorrowedAmount[];
}): LineAmounts {
  const { unit } = product;
  const planned = line.need.value;
  const more = uses.reduce((sum, { used, planned: reckoned }) => sum + used - (reckoned ?? used), 0);
  const byHand = stock?.usedByHand ?? 0;
  const used = byHand + uses.reduce((sum, use) => sum + use.used, 0);
  const now = stock?.now ?? 0;
  const lent = borrowed.reduce((sum, { amount }) => sum + amount, 0);
  const need = planned === null ? null : Math.max(0, planned + more + byHand);
  const stillNeeded = need === null ? null : Math.max(0, need - used);
  const short = stillNeeded === null ? null : stillNeeded - now - ordered.open - lent;
  const input = (name: string, value: number | null) => ({ name, value, unit });
  const made = (
    rule: string,
    value: number | null,
    inputs: Figure['working']['inputs'],
    notes: readonly string[] = [],
  ) => figure(value, unit, { rule, inputs, ...(notes.length === 0 ? {} : { notes }) });
  const beyond = stock?.beyond ?? 0;
  const standIn = stock?.standIn ?? 0;
  const lentHere = borrowed.reduce((sum, { here }) => sum + here, 0);
  const lentOpen = borrowed.reduce((sum, { open }) => sum + open, 0);
  const leftovers = (stock?.leftovers ?? 0) + beyond + standIn + lent - lentHere - lentOpen;
  return {
    need: made(
      'need = as planned + taken by finished coats beyond what was reckoned + taken by hand',
      need,
      [
        { ...input('as planned', planned), from: `buy/lines/${line.id}/need` },
        ...(uses.length === 0 ? [] : [input('finished coats took more than reckoned by', more)]),
        ...(byHand === 0 ? [] : [input('taken by hand', byHand)]),
      ],
      planned === null ? ['Not known; the problems say why.'] : [],
    ),
    onHand: made('on hand = leftovers that are good, and what was used of leftovers', leftovers, [
      {
        ...input('leftovers', stock?.leftovers ?? 0),
        ...(stock === undefined ? {} : { from: `buying/stock/${line.id}/leftovers` }),
      },
      ...(beyond === 0 ? [] : [input('used, but never entered as stock', beyond)]),
      ...(standIn === 0 ? [] : [input('used of what may take its place', standIn)]),
      ...(lent - lentHere - lentOpen === 0
        ? []
        : [input('leftovers of what may take its place', lent - lentHere - lentOpen)]),
    ]),
    ordered: made('ordered = packs ordered and not sent back', ordered.kept + lentHere + lentOpen, [
      input('ordered and kept', ordered.kept),
      ...(lentHere + lentOpen === 0
        ? []
        : [input('ordered of what may take its place', lentHere + lentOpen)]),
    ]),
    received: made('received = packs that came and were not sent back', ordered.here + lentHere, [
      input('still to come', ordered.open + lentOpen),
    ]),
    toOrder: made(
      'to order = need - used - here and good - still to come, not below 0',
      short === null ? null : short <= COVER_TOLERANCE ? 0 : short,
      [
        { ...input('need', need), from: `buying/lines/${line.id}/need` },
        input('used', used),
        {
          ...input('here and good', now),
          ...(stock === undefined ? {} : { from: `buying/stock/${line.id}/now` }),
        },
        input('still to come', ordered.open),
        ...borrowed.map(({ name, amount }) =>
          input(`there is enough of ${name}, which may take its place`, amount),
        ),
      ],
    ),
    open: ordered.open + lentOpen,
    surplus: stillNeeded === null ? 0 : Math.max(0, now + ordered.open - stillNeeded),
    notes: borrowed.map(({ name }) => `${name} on hand or on order takes its place in part or whole.`),
  };
}
