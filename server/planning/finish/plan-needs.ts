import type { Figure } from '../figure.ts';
import { CATEGORY_OF_KIND } from '../ledger/constants.ts';
import type { BandingPlan, MaterialPlan, NeedPlan, PartPlan, RecipePlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { Product } from '../product.ts';
import { COST_CATEGORIES, type ProjectInput } from '../project-input.ts';
import { coatDemands } from './coat-demands.ts';
import { extraDemands } from './extra-demands.ts';
import type { ProductDemand } from './product-demand.ts';
import { ruleDemands } from './rule-demands.ts';
import { sumFigure } from './sum-figure.ts';

/**
 * How much of each product does the project need, before packs and before what is on hand?
 *
 * need = sum over the coats, passes, usage rules and added lines that use it
 *
 * Banding, sheets and boards come in whole rolls and stocks by their cutting plans and are not needs of this list,
 * unless the user added some by hand.
 *
 * @returns one need per product in the product's unit, in the ledger's order, and what cannot be reckoned. A product of
 *   which nothing is needed has no need.
 *
 * Source: `coatDemands`, `ruleDemands`, `extraDemands`; nothing is computed here but sums.
 */
export function planNeeds(
  input: ProjectInput,
  plan: {
    readonly parts: readonly PartPlan[];
    readonly banding: readonly BandingPlan[];
    readonly materials: readonly MaterialPlan[];
    readonly recipes: readonly RecipePlan[];
  },
): { readonly needs: readonly NeedPlan[]; readonly problems: readonly Problem[] } {
  const products = new Map(input.catalogue.products.map((product) => [product.id, product]));
  const rules = ruleDemands(input, plan, products);
  const extras = extraDemands(input, products);
  const byProduct = new Map<string, ProductDemand[]>();
  for (const demand of [...coatDemands(input, plan.recipes, products), ...rules.demands, ...extras.demands]) {
    const list = byProduct.get(demand.productId);
    if (list === undefined) byProduct.set(demand.productId, [demand]);
    else list.push(demand);
  }
  const needs = [...byProduct]
    .flatMap(([id, demands]) => {
      const product = products.get(id);
      if (product === undefined) throw new RangeError(`planNeeds: product ${id} is not in the catalogue`);
      return needOf(product, demands);
    })
    .filter(({ need, needAtLowCoverage }) => need.value !== 0 || needAtLowCoverage.value !== 0)
    .sort((left, right) => COST_CATEGORIES.indexOf(left.category) - COST_CATEGORIES.indexOf(right.category));
  return { needs, problems: [...rules.problems, ...extras.problems] };
}

function needOf(product: Product, demands: readonly ProductDemand[]): NeedPlan {
  const notes = [...new Set(demands.flatMap((demand) => demand.notes))];
  const sum = (rule: string, amount: (demand: ProductDemand) => number | null): Figure =>
    sumFigure({
      rule,
      unit: product.unit,
      noun: 'uses',
      summands: demands.map((demand) => ({
        name: demand.name,
        value: amount(demand),
        ...(demand.from === '' ? {} : { from: demand.from }),
      })),
      notes,
    });
  return {
    id: product.id,
    name: product.name,
    category: CATEGORY_OF_KIND[product.kind],
    need: sum('need = sum over everything that uses it', ({ need }) => need),
    needAtLowCoverage: sum('need at low coverage', ({ atCoverage }) => atCoverage.low),
    needAtTypicalCoverage: sum('need at typical coverage', ({ atCoverage }) => atCoverage.typical),
    needAtHighCoverage: sum('need at high coverage', ({ atCoverage }) => atCoverage.high),
  };
}
