import { plannedCostByCategory } from '../ledger/planned-cost-by-category.ts';
import type { BandingPlan, BuyLine, BuyPlan, MaterialPlan, NeedPlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import { COST_CATEGORIES, type ProjectInput } from '../project-input.ts';
import { buyTotals } from './buy-totals.ts';
import { cuttingLine } from './cutting-line.ts';
import { extraLine } from './extra-line.ts';
import { needLine } from './need-line.ts';
import { onHandAmounts } from './on-hand-amounts.ts';
import { stockPurchases } from './stock-purchases.ts';

/** Most percent of tax the settings may say. */
const MAX_TAX_PERCENT = 100;

/**
 * What is to be ordered, in whole packs, and what does it come to?
 *
 * @param plan needs from `planNeeds`; banding and materials with their cutting plans
 * @returns lines in the ledger's order, totals in whole minor units, and what stands in the way of a price
 *
 * Source: `needLine`, `cuttingLine`, `extraLine`, `buyTotals`; nothing is computed here.
 */
export function planBuying(
  input: ProjectInput,
  plan: {
    readonly needs: readonly NeedPlan[];
    readonly banding: readonly BandingPlan[];
    readonly materials: readonly MaterialPlan[];
  },
): { readonly buy: BuyPlan; readonly problems: readonly Problem[] } {
  const products = new Map(input.catalogue.products.map((product) => [product.id, product]));
  const onHand = onHandAmounts(input, products);
  const purchases = stockPurchases(plan, products);
  const added = new Set(plan.needs.map(({ id }) => id));
  const problems: Problem[] = [...onHand.problems];
  const lines: BuyLine[] = [];
  for (const purchase of purchases) {
    if (added.has(purchase.product.id)) continue;
    const made = cuttingLine(purchase, input);
    lines.push(made.line);
    problems.push(...made.problems);
  }
  for (const need of plan.needs) {
    const product = products.get(need.id);
    if (product === undefined) throw new RangeError(`planBuying: product ${need.id} is not in the catalogue`);
    const made = needLine({
      product,
      need,
      onHand: onHand.amounts.get(need.id) ?? { amount: 0, rows: [] },
      cutting: purchases.find((purchase) => purchase.product.id === need.id) ?? null,
      input,
    });
    lines.push(made.line);
    problems.push(...made.problems);
  }
  for (const extra of input.extras) {
    if (extra.productId !== '') continue;
    const made = extraLine(extra, input);
    lines.push(made.line);
    problems.push(...made.problems);
  }
  lines.sort(
    (left, right) => COST_CATEGORIES.indexOf(left.category) - COST_CATEGORIES.indexOf(right.category),
  );
  const { taxPercent } = input.settings;
  const taxFits = taxPercent === null || (taxPercent >= 0 && taxPercent <= MAX_TAX_PERCENT);
  return {
    buy: {
      lines,
      ...buyTotals(lines, taxFits ? taxPercent : null),
      categories: plannedCostByCategory(lines),
    },
    problems: [...problems, ...(taxFits ? [] : [taxInvalid(taxPercent)])],
  };
}

function taxInvalid(taxPercent: number): Problem {
  return {
    code: 'setting-invalid',
    severity: 'error',
    at: { table: 'settings', id: null, field: 'taxPercent' },
    message: `The tax rate is ${taxPercent} %, which is not from 0 to ${MAX_TAX_PERCENT} %, so totals are before tax.`,
    wayOut: 'Enter the tax added to prices in percent, such as 8 or 20, or leave it empty.',
  };
}
