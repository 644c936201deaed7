import type { Problem } from '../problem.ts';
import type { Product, ProductKind } from '../product.ts';
import type { RecipeStep } from '../project-input.ts';
import { chosenProduct } from './chosen-product.ts';
import { planDryPass } from './plan-dry-pass.ts';
import { readFigure } from './read-figure.ts';
import { stepArea } from './step-area.ts';
import type { StepContext, StepPlan } from './step-context.ts';
import { stepLabel } from './step-label.ts';
import { stepValues } from './step-values.ts';

/**
 * The passes of one step of dry work: sanding, scuffing, dusting off with a cloth.
 *
 * Source: `planDryPass`.
 */
export function planDryStep(step: RecipeStep, { recipe, area, products }: StepContext): StepPlan {
  const label = stepLabel(recipe, step);
  const values = stepValues({ ...step, thinning: 0, transferEfficiency: null, sessionLossL: null }, label);
  const place = { table: 'steps', id: step.id, field: 'productId' } as const;
  const kinds: readonly ProductKind[] = step.kind === 'dust' ? ['consumable', 'abrasive'] : ['abrasive'];
  const { product, problems } =
    step.productId === ''
      ? { product: null, problems: [productMissing(label, place)] }
      : chosenProduct({ products, id: step.productId, kinds, place, user: label });
  const rateUnknown = product !== null && readFigure(product, 'areaPerPiece').value === null;
  return {
    coats: Array.from({ length: values.coats ?? 1 }, (_, index) =>
      planDryPass({
        step,
        number: index + 1,
        product,
        area: stepArea(area.areaM2, values.coats),
        recipePath: `recipes/${recipe.id}`,
      }),
    ),
    problems: [...values.problems, ...problems, ...(rateUnknown ? [rateMissing(label, product, place)] : [])],
  };
}

function productMissing(label: string, at: Problem['at']): Problem {
  return {
    code: 'step-product-missing',
    severity: 'warning',
    at,
    message: `${label} has no abrasive, so its pieces are not on the buy list.`,
    wayOut: 'Choose the abrasive this step uses.',
  };
}

function rateMissing(label: string, product: Product, at: Problem['at']): Problem {
  return {
    code: 'usage-rate-missing',
    severity: 'error',
    at,
    message: `${label} uses "${product.name}", but the area one piece serves is not known, so its pieces are unknown.`,
    wayOut: 'Enter the area per piece of the product in the catalogue.',
  };
}
