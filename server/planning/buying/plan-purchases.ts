import type { BuyLine, Plan } from '../plan-output.ts';
import type { Product } from '../product.ts';
import type { ProjectInput } from '../project-input.ts';
import type { BuyingPlan } from './buying-plan.ts';
import { type BuyingCalendar, neededByReader } from './dates/needed-by.ts';
import { extraPurchase } from './extra-purchase.ts';
import { groupedBy } from './grouped-by.ts';
import { type BorrowedAmount, lineAmounts, orderedAmounts } from './line-amounts.ts';
import { nothingOf, withOrderedOnly } from './ordered-only-lines.ts';
import { orderLineCounts } from './orders/order-line-counts.ts';
import { orderStates } from './orders/order-states.ts';
import { piecesFigure, piecesWanted } from './pieces-wanted.ts';
import { placeLines } from './place-lines.ts';
import type { OpenLine } from './placed-line.ts';
import { purchaseProblems } from './problems/purchase-problems.ts';
import { coatUses } from './stock/coat-uses.ts';
import { gotCoverages } from './stock/got-coverages.ts';
import { productStocks } from './stock/product-stock.ts';
import { stockItems } from './stock/stock-items.ts';
import { lineOffers, type Wanted } from './suppliers/line-offers.ts';
import { supplierBaskets } from './suppliers/supplier-baskets.ts';

export interface PurchaseQuestion {
  /** The project with all that is on hand, also what is past its date. */
  readonly input: ProjectInput;
  /** Its plan, made without what is past its date. */
  readonly plan: Pick<Plan, 'buy' | 'recipes'>;
  /** YYYY-MM-DD in the project's time zone. */
  readonly today: string;
  readonly calendar: BuyingCalendar | null;
}

/**
 * What is still to be ordered, from whom and until when; what is on its way; and what is in the shop?
 *
 * @param question the project, its plan, the day, and its coat calendar
 * @returns see `BuyingPlan`; deterministic, and never an exception for what a user can type
 *
 * Source: `lineAmounts`, `lineOffers`, `chooseSuppliers`, `orderBy`; nothing is computed here. Valid range: any project.
 * Departures: rolls, sheets and boards are bought as their cutting plan has them; a product is bought from one supplier.
 */
export function planPurchases({ input, plan, today, calendar }: PurchaseQuestion): BuyingPlan {
  const { catalogue, settings, orderLines, receipts } = input;
  const products = new Map(catalogue.products.map((product) => [product.id, product]));
  const receiptsOf = groupedBy(receipts, ({ orderLineId }) => orderLineId);
  const counts = new Map(
    orderLines.map((line) => [line.id, orderLineCounts(line, receiptsOf.get(line.id) ?? [])]),
  );
  const uses = coatUses(input, plan.recipes, calendar);
  const usesOf = groupedBy(uses, ({ productId }) => productId);
  const stocks = productStocks(input, uses, today);
  const orderedOf = groupedBy(orderLines, ({ productId }) => productId);
  const neededBy = neededByReader(input, calendar);
  const planLines = withOrderedOnly(plan.buy.lines, input, products);

  const amountsOf = (line: BuyLine, product: Product, borrowed: readonly BorrowedAmount[] = []) =>
    lineAmounts({
      line,
      product,
      stock: stocks.get(product.id),
      ordered: orderedAmounts(orderedOf.get(product.id) ?? [], counts),
      uses: usesOf.get(product.id) ?? [],
      borrowed,
    });
  const spare = surpluses();
  const lines = planLines.map((line): OpenLine => {
    const product = line.productId === null ? undefined : products.get(line.productId);
    if (product === undefined) return extraPurchase(line, input, counts);
    const stands = substitutesOf(product.id);
    const amounts = amountsOf(line, product);
    const cut = isCutToSize(product);
    const lent = cut ? [] : borrow(amounts.toOrder.value ?? 0, stands);
    const final = lent.length === 0 ? amounts : amountsOf(line, product, lent);
    const wanted = cut
      ? piecesWanted({
          line,
          products: [product, ...stands].map((one) => ({
            product: one,
            orderLines: orderedOf.get(one.id) ?? [],
          })),
          counts,
          takenByHand: stocks.get(product.id)?.usedByHand ?? 0,
        })
      : amountWanted(final.toOrder.value);
    const offers =
      wanted === null
        ? []
        : lineOffers({ products: [product, ...stands], wanted, catalogue, currency: settings.currency });
    const toOrder =
      cut && wanted?.kind === 'pieces' && final.toOrder.value !== null
        ? piecesFigure(line, wanted)
        : final.toOrder;
    return { line, product, amounts: { ...final, toOrder }, offers, extraPacks: null };
  });

  const orders = orderStates(input, counts, today);
  const taxPercent = usableTax(settings.taxPercent);
  const placed = placeLines({ lines, input, neededBy, today, taxPercent });
  return {
    today,
    lines: placed.lines,
    baskets: supplierBaskets(placed.lines, catalogue.suppliers, settings.currency, taxPercent),
    choice: placed.choice,
    orders,
    stock: stockItems(catalogue.products, stocks, uses),
    coverages: gotCoverages(input, plan.recipes, uses),
    problems: purchaseProblems({ input, today, uses, stocks, lines: placed.lines, orders }),
  };

  function substitutesOf(productId: string): readonly Product[] {
    return input.substitutes
      .filter((row) => row.productId === productId && row.substituteId !== productId)
      .flatMap(({ substituteId }) => products.get(substituteId) ?? [])
      .filter(({ unit }) => unit === products.get(productId)?.unit);
  }

  /** What there is of products that may stand in for others, beyond their own need. */
  function surpluses(): Map<string, number> {
    const spares = new Map<string, number>();
    for (const { substituteId } of input.substitutes) {
      const product = products.get(substituteId);
      if (product === undefined || isCutToSize(product)) continue;
      const own = planLines.find(({ productId }) => productId === substituteId);
      spares.set(substituteId, amountsOf(own ?? nothingOf(product), product).surplus);
    }
    return spares;
  }

  function borrow(short: number, stands: readonly Product[]): readonly BorrowedAmount[] {
    let missing = short;
    return stands.flatMap(({ id, name }) => {
      const amount = Math.min(missing, spare.get(id) ?? 0);
      if (amount <= 0) return [];
      missing -= amount;
      spare.set(id, (spare.get(id) ?? 0) - amount);
      const ordered = orderedAmounts(orderedOf.get(id) ?? [], counts);
      const here = Math.min(amount, ordered.here);
      return [{ name, amount, here, open: Math.min(amount - here, ordered.open) }];
    });
  }
}

function amountWanted(amount: number | null): Wanted | null {
  return amount === null ? null : { kind: 'amount', amount };
}

function isCutToSize({ kind }: Product): boolean {
  return kind === 'sheet' || kind === 'board' || kind === 'banding';
}

function usableTax(percent: number | null): number | null {
  return percent !== null && percent >= 0 && percent <= 100 ? percent : null;
}
