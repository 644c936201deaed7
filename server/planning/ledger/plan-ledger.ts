import type { BuyingPlan } from '../buying/buying-plan.ts';
import { figure } from '../figure.ts';
import type { Plan } from '../plan-output.ts';
import type { ProjectInput } from '../project-input.ts';
import { PERCENT_STEPS, WHOLE_IN_PERCENT_STEPS } from './constants.ts';
import type { CostItem } from './cost-item.ts';
import { costShares } from './cost-shares.ts';
import { difference } from './difference.ts';
import { fractionHalfUp } from './fraction-half-up.ts';
import { labourCost } from './labour-cost.ts';
import { type LedgerEntries, ledgerEntries, looseName, orderName } from './ledger-entries.ts';
import { ledgerHeadings } from './ledger-headings.ts';
import type { LedgerPlan } from './ledger-plan.ts';
import { ledgerProblems } from './ledger-problems.ts';
import { orderFigures } from './order-figures.ts';
import { perM2 } from './per-m2.ts';
import { plannedItems } from './planned-items.ts';
import { priceHistory } from './price-history.ts';
import { spendSeries } from './spend-series.ts';
import { sumMinor } from './sum-minor.ts';
import { toOrderItems } from './to-order-items.ts';
import { usableTax } from './usable-tax.ts';

export interface LedgerQuestion {
  readonly input: ProjectInput;
  readonly plan: Pick<Plan, 'parts' | 'recipes' | 'buy' | 'totals'>;
  /** What is still to be ordered. */
  readonly buying: Pick<BuyingPlan, 'lines' | 'baskets'>;
  /** Minutes of hands-on work the coat calendar still plans; null when there is none. */
  readonly handsOnMin: number | null;
  /** YYYY-MM-DD. */
  readonly today: string;
}

/**
 * What may the project cost, what does it cost, and what will it have cost at the end?
 *
 * @returns money in whole minor units of the project's currency, with tax where a rate is set; see `LedgerPlan`. The
 *   contingency is a share of what is still to be ordered, rounded half up: what is ordered is no longer in doubt.
 *
 * Source: the functions it composes; nothing is computed here but sums.
 */
export function planLedger({ input, plan, buying, handsOnMin, today }: LedgerQuestion): LedgerPlan {
  const { settings, catalogue } = input;
  const taxPercent = usableTax(settings.taxPercent);
  const entries = ledgerEntries(input, taxPercent);
  const planned = plannedItems(plan.buy.lines, catalogue, settings.currency, taxPercent);
  const open = toOrderItems(buying, taxPercent);
  const { headings, totals } = ledgerHeadings({ budgets: input.budgets, planned, toOrder: open, entries });
  const contingency = contingencyOf(totals.toOrder.value, settings.contingencyPercent);
  const forecast = sumMinor('forecast = ordered + to order + contingency', 'amounts', [
    { name: 'ordered', value: totals.ordered.value, from: 'ledger/totals/ordered' },
    { name: 'to order', value: totals.toOrder.value, from: 'ledger/totals/toOrder' },
    { name: 'contingency', value: contingency.value, from: 'ledger/contingency' },
  ]);
  const labour = labourCost(input.workHours, handsOnMin, settings.rateMinorPerHour);
  const readyMade = figure(settings.readyMadeMinor, 'minor', {
    rule: 'price of the same piece ready made, with tax, as entered',
    inputs: [],
    ...(settings.readyMadeMinor === null ? { notes: ['No ready-made price is entered.'] } : {}),
  });
  const known = labour.value === null || forecast.value === null;
  const forecastWithLabour = known
    ? figure(null, 'minor', {
        rule: 'forecast with labour = forecast + labour',
        inputs: [],
        notes: [
          labour.value === null ? 'Not known, since labour is not.' : 'Not known, since the forecast is not.',
        ],
      })
    : sumMinor('forecast with labour = forecast + labour', 'amounts', [
        { name: 'forecast', value: forecast.value, from: 'ledger/forecast' },
        { name: 'labour', value: labour.value, from: 'ledger/labour' },
      ]);
  const dearer = 'Below 0: building it costs more than buying it.';
  return {
    headings,
    totals,
    contingency,
    forecast,
    labour,
    forecastWithLabour,
    readyMade,
    saved: difference(
      'saved = ready-made price - forecast',
      ['ready-made price', readyMade, 'ledger/readyMade'],
      ['forecast', forecast, 'ledger/forecast'],
      dearer,
    ),
    savedWithLabour: difference(
      'saved = ready-made price - forecast with labour',
      ['ready-made price', readyMade, 'ledger/readyMade'],
      ['forecast with labour', forecastWithLabour, 'ledger/forecastWithLabour'],
      dearer,
    ),
    perFinishM2: perM2(forecast, plan.totals.finishM2.value),
    ...costShares([...orderedItems(entries), ...open], input, plan),
    orders: entries.orders.map((order) =>
      orderFigures(
        order,
        entries.payments.filter(({ orderId }) => orderId === order.order.id),
      ),
    ),
    payments: entries.payments.map(({ payment, ownMinor }) => ({
      id: payment.id,
      own: figure(ownMinor, 'minor', {
        rule:
          payment.kind === 'refund'
            ? 'own = refund x share of this project, rounded half up; below 0, since it came back'
            : 'own = payment x share of this project, rounded half up',
        inputs: [
          { name: payment.kind, value: payment.amountMinor, unit: 'minor' },
          { name: 'share of this project', value: payment.share, unit: 'ratio' },
        ],
      }),
    })),
    series: spendSeries(entries, today),
    prices: priceHistory(input, plan.buy.lines),
    problems: ledgerProblems(input, entries),
  };
}

function contingencyOf(toOrderMinor: number | null, percent: number) {
  const steps = Math.round(percent * PERCENT_STEPS);
  return figure(
    toOrderMinor === null ? null : fractionHalfUp(toOrderMinor, steps, WHOLE_IN_PERCENT_STEPS),
    'minor',
    {
      rule: 'contingency = to order x percent, rounded half up',
      inputs: [
        { name: 'to order', value: toOrderMinor, unit: 'minor', from: 'ledger/totals/toOrder' },
        { name: 'contingency', value: percent, unit: 'percent', source: 'project setting' },
      ],
    },
  );
}

/** Everything that is ordered, or was bought without an order. */
function orderedItems({ orders, loose }: LedgerEntries): readonly CostItem[] {
  return [
    ...orders.flatMap((order): CostItem[] => [
      ...order.lines.map(({ line, goodsMinor, totalMinor }) => ({
        name: line.name,
        category: line.category,
        productId: line.productId === '' ? null : line.productId,
        netMinor: goodsMinor,
        totalMinor,
      })),
      ...order.charges.map(
        ({ name, netMinor, taxMinor }): CostItem => ({
          name: `${name}, ${orderName(order)}`,
          category: 'other',
          productId: null,
          netMinor,
          totalMinor: netMinor + taxMinor,
        }),
      ),
    ]),
    ...loose.map(
      (entry): CostItem => ({
        name: looseName(entry),
        category: entry.payment.category,
        productId: null,
        netMinor: null,
        totalMinor: entry.ownMinor,
      }),
    ),
  ];
}
