import type { Problem } from '../../problem.ts';
import type { ProjectInput } from '../../project-input.ts';
import type { BuyingLine, OrderState } from '../buying-plan.ts';
import type { CoatUse } from '../stock/coat-uses.ts';
import type { ProductStock } from '../stock/product-stock.ts';
import { orderProblems } from './order-problems.ts';
import { stockProblems } from './stock-problems.ts';
import { supplierProblems } from './supplier-problems.ts';

/** What the buying plan has found out so far. */
export interface PurchaseFacts {
  readonly input: ProjectInput;
  /** YYYY-MM-DD */
  readonly today: string;
  readonly uses: readonly CoatUse[];
  readonly stocks: ReadonlyMap<string, ProductStock>;
  readonly lines: readonly BuyingLine[];
  readonly orders: readonly OrderState[];
}

/**
 * What is doubtful about orders, deliveries, stock and suppliers?
 *
 * @returns a problem per doubtful cell; everything else is reckoned all the same
 *
 * Source: definition. Valid range: any project. Departures: none.
 */
export function purchaseProblems(facts: PurchaseFacts): readonly Problem[] {
  return [...orderProblems(facts), ...stockProblems(facts), ...supplierProblems(facts)];
}
