import { groupRows } from './group-rows.ts';
import type { LedgerEntries } from './ledger-entries.ts';
import type { SpendPoint } from './ledger-plan.ts';
import { type LineMoney, packsWithTax } from './line-money.ts';

interface Step {
  readonly date: string;
  readonly orderedMinor: number;
  readonly paidMinor: number;
}

/**
 * How much had been ordered, and how much paid, by each date?
 *
 * @param today YYYY-MM-DD, for entries none of which has a date
 * @returns a point per date on which something changed, in order of date; each counts on from the one before, in whole minor
 *   units with tax. Goods sent back come off on the day they went back. What has no date counts from the first date on, and
 *   what has no price is left out, so the last point equals the totals of the ledger. A point too large to be kept exactly is
 *   left out.
 *
 * Source: definition. Example: an order of 100.00 on the 3rd, half paid on the 5th: (3rd, 100.00, 0), (5th, 100.00, 50.00).
 */
export function spendSeries(entries: LedgerEntries, today: string): readonly SpendPoint[] {
  const steps: Step[] = [
    ...entries.orders.flatMap(({ order, lines, charges }) => [
      ...lines.flatMap((line) => lineSteps(line, order.date, entries)),
      ...charges.map(({ netMinor, taxMinor }) => step(order.date, netMinor + taxMinor, 0)),
    ]),
    ...entries.payments.map(({ payment, ownMinor, orderId }) =>
      step(payment.date, orderId === null ? ownMinor : 0, ownMinor),
    ),
  ];
  const dates = [...new Set(steps.map(({ date }) => date))].filter((date) => date !== '').toSorted();
  if (steps.length > 0 && dates.length === 0) dates.push(today);
  const first = dates[0] ?? today;
  const byDate = groupRows(steps, ({ date }) => (date === '' ? first : date));
  let [orderedMinor, paidMinor] = [0, 0];
  return dates.flatMap((date) => {
    for (const change of byDate.get(date) ?? []) {
      orderedMinor += change.orderedMinor;
      paidMinor += change.paidMinor;
    }
    const exact = Number.isSafeInteger(orderedMinor) && Number.isSafeInteger(paidMinor);
    return exact ? [{ date, orderedMinor, paidMinor }] : [];
  });
}

function step(date: string, orderedMinor: number, paidMinor: number): Step {
  return { date, orderedMinor, paidMinor };
}

/** What was ordered on the order's date, less what each return took off. */
function lineSteps(
  { line, taxPercent, grossMinor, totalMinor }: LineMoney,
  date: string,
  { receipts }: LedgerEntries,
): readonly Step[] {
  if (totalMinor === null) return [];
  const price = line.invoicedPriceMinor ?? line.unitPriceMinor;
  if (grossMinor === null) return [step(date, totalMinor, 0)];
  let packs = line.count;
  let before = grossMinor;
  const returns = (receipts.get(line.id) ?? [])
    .filter(({ kind }) => kind === 'returned')
    .toSorted((one, other) => (one.date < other.date ? -1 : Number(one.date > other.date)))
    .map((receipt) => {
      packs = Math.max(0, packs - receipt.count);
      const now = packsWithTax(packs, price, taxPercent)?.totalMinor ?? before;
      const change = step(receipt.date, now - before, 0);
      before = now;
      return change;
    });
  return [step(date, grossMinor, 0), ...returns];
}
