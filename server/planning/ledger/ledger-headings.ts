import { type Figure, figure } from '../figure.ts';
import type { Summand } from '../finish/sum-figure.ts';
import { type Budget, COST_CATEGORIES, type CostCategory } from '../project-input.ts';
import type { CostItem } from './cost-item.ts';
import { difference } from './difference.ts';
import { type LedgerEntries, looseName, orderName } from './ledger-entries.ts';
import type { LedgerHeading } from './ledger-plan.ts';
import { sumMinor } from './sum-minor.ts';

export interface HeadingItems {
  readonly budgets: readonly Budget[];
  readonly planned: readonly CostItem[];
  readonly toOrder: readonly CostItem[];
  readonly entries: LedgerEntries;
}

const AFTER_PAYMENT = 'Below 0: more is paid than ordered, so money is to come back.';
const NO_BUDGET = 'No budget is set.';
const OVER = 'Below 0: the budget will not do.';

/**
 * What may be spent, is planned, ordered, paid and still to come under each heading of the ledger?
 *
 * @param items budgets, planned and still to be ordered, orders and payments; whole minor units
 * @returns every heading in the ledger's order, and their totals; with tax, where a rate is set. Totals are sums of the
 *   headings, so they equal the sum of the rounded lines. What has no known price is left out and said so.
 *
 * Source: definition. Sums of whole numbers, so nothing is rounded here.
 */
export function ledgerHeadings(items: HeadingItems): {
  readonly headings: readonly LedgerHeading[];
  readonly totals: Omit<LedgerHeading, 'id'>;
} {
  const headings = COST_CATEGORIES.map((id) => ({
    id,
    ...derived(sums(items, id), `ledger/headings/${id}`),
  }));
  const total = (rule: string, field: keyof Sums, those: readonly LedgerHeading[] = headings): Figure =>
    sumMinor(
      rule,
      'headings',
      those.map((heading) => ({
        name: heading.id,
        value: heading[field].value,
        from: `ledger/headings/${heading.id}/${field}`,
      })),
    );
  const budgets = headings.filter(({ budget }) => budget.value !== null);
  return {
    headings,
    totals: derived(
      {
        budget:
          budgets.length === 0
            ? unknown('budget = sum of the headings', NO_BUDGET)
            : total('budget = sum of the headings that have one', 'budget', budgets),
        planned: total('planned = sum of the headings', 'planned'),
        ordered: total('ordered = sum of the headings', 'ordered'),
        paid: total('paid = sum of the headings', 'paid'),
        toOrder: total('to order = sum of the headings', 'toOrder'),
      },
      'ledger/totals',
    ),
  };
}

type Sums = Pick<LedgerHeading, 'budget' | 'planned' | 'ordered' | 'paid' | 'toOrder'>;

function sums({ budgets, planned, toOrder, entries }: HeadingItems, id: CostCategory): Sums {
  const mine = budgets.filter(({ category }) => category === id);
  const loose = entries.loose
    .filter(({ payment }) => payment.category === id)
    .map(
      (entry): Summand => ({
        name: looseName(entry),
        value: entry.ownMinor,
        from: `ledger/payments/${entry.payment.id}/own`,
      }),
    );
  return {
    budget:
      mine.length === 0
        ? unknown('budget as entered', NO_BUDGET)
        : sumMinor(
            'budget as entered',
            'budgets',
            mine.map(({ amountMinor }) => ({ name: 'budget', value: amountMinor })),
          ),
    planned: itemSum('planned = sum of the lines of the plan with their tax', planned, id),
    ordered: sumMinor(
      'ordered = packs ordered and not sent back, at the price charged or agreed, with tax; and what was bought without an order',
      'lines',
      [...orderedOf(entries, id), ...loose],
    ),
    paid: sumMinor(
      'paid = shares of the payments for orders, and what was bought without an order; refunds taken off',
      'payments',
      [
        ...entries.orders.flatMap((order): Summand[] => {
          const value = order.paidBy.get(id) ?? 0;
          return value === 0
            ? []
            : [{ name: `paid for ${orderName(order)}`, value, from: `ledger/orders/${order.order.id}/paid` }];
        }),
        ...loose,
      ],
    ),
    toOrder: itemSum('to order = what the plan needs and is not ordered, with tax', toOrder, id),
  };
}

function orderedOf(entries: LedgerEntries, id: CostCategory): readonly Summand[] {
  return entries.orders.flatMap((order): Summand[] => [
    ...order.lines
      .filter(({ line }) => line.category === id)
      .map(({ line, kept, totalMinor }) => ({
        name: `${kept} x ${line.name || 'line without a name'}, ${orderName(order)}`,
        value: totalMinor,
      })),
    ...(id === 'other'
      ? order.charges.map(({ name, netMinor, taxMinor }) => ({
          name: `${name}, ${orderName(order)}`,
          value: netMinor + taxMinor,
        }))
      : []),
  ]);
}

function itemSum(rule: string, items: readonly CostItem[], id: CostCategory): Figure {
  return sumMinor(
    rule,
    'lines',
    items
      .filter(({ category }) => category === id)
      .map(({ name, totalMinor, from }) => ({
        name,
        value: totalMinor,
        ...(from === undefined ? {} : { from }),
      })),
  );
}

function derived(sums: Sums, path: string): Omit<LedgerHeading, 'id'> {
  const { budget, ordered, paid, toOrder } = sums;
  const forecast = sumMinor('forecast = ordered + to order', 'amounts', [
    { name: 'ordered', value: ordered.value, from: `${path}/ordered` },
    { name: 'to order', value: toOrder.value, from: `${path}/toOrder` },
  ]);
  return {
    ...sums,
    open: difference(
      'open = ordered - paid',
      ['ordered', ordered, `${path}/ordered`],
      ['paid', paid, `${path}/paid`],
      AFTER_PAYMENT,
    ),
    forecast,
    left: difference(
      'left = budget - forecast',
      ['budget', budget, `${path}/budget`],
      ['forecast', forecast, `${path}/forecast`],
      OVER,
    ),
  };
}

function unknown(rule: string, note: string): Figure {
  return figure(null, 'minor', { rule, inputs: [], notes: [note] });
}
