import type { Plan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { ProjectInput } from '../project-input.ts';
import type { BuyingLine } from './buying-plan.ts';
import type { OrderLineCounts } from './orders/order-line-counts.ts';
import type { CoatUse } from './stock/coat-uses.ts';
import type { ProductStock } from './stock/product-stock.ts';

/** Placeholder. */
export function purchaseProblems(_given: {
  readonly input: ProjectInput;
  readonly plan: Pick<Plan, 'recipes'>;
  readonly today: string;
  readonly counts: ReadonlyMap<string, OrderLineCounts>;
  readonly uses: readonly CoatUse[];
  readonly stocks: ReadonlyMap<string, ProductStock>;
  readonly lines: readonly BuyingLine[];
}): readonly Problem[] {
  return [];
}
