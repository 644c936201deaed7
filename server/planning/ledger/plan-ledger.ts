import type { BuyingPlan } from '../buying/buying-plan.ts';
import type { Plan } from '../plan-output.ts';
import type { ProjectInput } from '../project-input.ts';
import { contingencyFigure } from './contingency-figure.ts';
import { costShares } from './cost-shares.ts';
import { labourCost } from './labour-cost.ts';
import { ledgerEntries } from './ledger-entries.ts';
import { ledgerHeadings } from './ledger-headings.ts';
import type { LedgerPlan } from './ledger-plan.ts';
import { ledgerProblems } from './ledger-problems.ts';
import { orderFigures } from './order-figures.ts';
import { orderedItems } from './ordered-items.ts';
import { paymentFigure } from './payment-figure.ts';
import { perM2 } from './per-m2.ts';
import { plannedItems } from './planned-items.ts';
import { priceHistory } from './price-history.ts';
import { readyMadeComparison } from './ready-made-comparison.ts';
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
  const contingency = contingencyFigure(totals.toOrder.value, settings.contingencyPercent);
  const forecast = sumMinor('forecast = ordered + to order + contingency', 'amounts', [
    { name: 'ordered', value: totals.ordered.value, from: 'ledger/totals/ordered' },
    { name: 'to order', value: totals.toOrder.value, from: 'ledger/totals/toOrder' },
    { name: 'contingency', value: contingency.value, from: 'ledger/contingency' },
  ]);
  const labour = labourCost(input.workHours, handsOnMin, settings.rateMinorPerHour);
  return {
    headings,
    totals,
    contingency,
    forecast,
    labour,
    ...readyMadeComparison(settings.readyMadeMinor, forecast, labour),
    perFinishM2: perM2(forecast, plan.totals.finishM2.value),
    ...costShares([...orderedItems(entries), ...open], input, plan),
    orders: entries.orders.map((order) =>
      orderFigures(
        order,
        entries.payments.filter(({ orderId }) => orderId === order.order.id),
      ),
    ),
    payments: entries.payments.map(paymentFigure),
    series: spendSeries(entries, today),
    prices: priceHistory(input, plan.buy.lines),
    problems: ledgerProblems(input, entries),
  };
}
