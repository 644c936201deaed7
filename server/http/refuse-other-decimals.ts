import { currencyDigits } from '../planning/display/currency-digits.ts';
import type { ProjectInput } from '../planning/project-input.ts';
import type { Change } from './contract.ts';
import { HttpRefusal } from './http-refusal.ts';

/**
 * Refuses to change the currency of a project that has amounts to one with other decimals: amounts are whole minor units, so
 * 107.00 euros would become 10,700 yen. Between currencies with as many decimals the figures stay what they look like.
 */
export function refuseOtherDecimals(project: () => ProjectInput, changes: readonly Change[]): void {
  for (const change of changes) {
    const after = change.op === 'settings' ? change.values.currency : undefined;
    if (typeof after !== 'string') continue;
    const input = project();
    const before = input.settings.currency;
    if (currencyDigits(after) === currencyDigits(before) || !hasAmounts(input)) continue;
    throw new HttpRefusal(
      'in-use',
      `This project has amounts in ${before}, with ${decimals(before)}; ${after} has ${decimals(after)}, so each would become another amount.`,
      `Begin a project in ${after}, or delete orders, payments, budgets, quotes and prices of this one first.`,
    );
  }
}

function hasAmounts({
  settings,
  orders,
  orderLines,
  payments,
  budgets,
  quotes,
  extras,
}: ProjectInput): boolean {
  const { rateMinorPerHour, readyMadeMinor, heatPricePerKwhMinor } = settings;
  return (
    [orders, orderLines, payments, budgets].some((rows) => rows.length > 0) ||
    quotes.some((quote) => quote.materialsMinor !== null || quote.rateMinorPerHour !== null) ||
    extras.some(({ unitPriceMinor }) => unitPriceMinor !== null) ||
    [rateMinorPerHour, readyMadeMinor, heatPricePerKwhMinor].some((minor) => minor !== null)
  );
}

function decimals(currency: string): string {
  const digits = currencyDigits(currency);
  return digits === 0 ? 'no decimals' : `${digits} decimals`;
}
