import type { CoatPlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { Product } from '../product.ts';
import type { Recipe, RecipeStep } from '../project-input.ts';
import { chosenProduct } from './chosen-product.ts';
import type { CoatBasis } from './coat-basis.ts';
import type { Liquid } from './liquid.ts';
import { planCoat } from './plan-coat.ts';
import type { Reading } from './read-figure.ts';
import { stepArea } from './step-area.ts';
import type { StepContext, StepPlan } from './step-context.ts';
import { stepLabel } from './step-label.ts';
import { stepLiquid } from './step-liquid.ts';
import { stepValues } from './step-values.ts';

/**
 * The coats of one step that lays a liquid, numbered from 1.
 *
 * Source: `planCoat`. The first-coat factor falls on coat 1 of a step on wood that no earlier sealer or topcoat of
 * the recipe has closed: a rule of ours, after the catalogue's definition of the factor ("on bare wood").
 */
export function planCoatStep(step: RecipeStep, context: StepContext): StepPlan {
  const { recipe, area, products, settings, lossShare } = context;
  const label = stepLabel(recipe, step);
  const values = stepValues(step, label);
  const { liquid, problems } = stepLiquid({ step, label, ...context });
  const thinner = thinnerOf(step, label, liquid, products);
  const recipePath = `recipes/${recipe.id}`;
  const coats = Array.from({ length: values.coats ?? 1 }, (_, index): CoatPlan => {
    const number = index + 1;
    const basis: CoatBasis = {
      path: `${recipePath}/coats/${step.id}-${number}`,
      recipePath,
      area: stepArea(area.areaM2, values.coats),
      method: step.method,
      values,
      firstCoatFactor: firstCoatFactor(liquid, number, closedBefore(recipe, step)),
      lossShare,
    };
    return planCoat({
      step,
      number,
      liquid,
      thinner: thinner.product,
      basis,
      coverageChoice: settings.coverageChoice,
    });
  });
  return { coats, problems: [...values.problems, ...problems, ...thinner.problems] };
}

/** An earlier sealer or topcoat has closed the wood, so that the coat no longer soaks in. */
function closedBefore(recipe: Recipe, step: RecipeStep): boolean {
  return recipe.steps
    .slice(0, recipe.steps.indexOf(step))
    .some(({ kind }) => kind === 'seal' || kind === 'topcoat');
}

function firstCoatFactor(liquid: Liquid | null, number: number, closed: boolean): Reading {
  if (number > 1) return { value: 1, source: 'not the first coat of the step', notes: [] };
  if (closed) return { value: 1, source: 'an earlier sealer or topcoat has closed the wood', notes: [] };
  return liquid?.firstCoatFactor ?? { value: 1, source: '', notes: [] };
}

function thinnerOf(
  step: RecipeStep,
  label: string,
  liquid: Liquid | null,
  products: ReadonlyMap<string, Product>,
): { readonly product: Product | null; readonly problems: readonly Problem[] } {
  if (!(step.thinning > 0)) return { product: null, problems: [] };
  const place = { table: 'steps', id: step.id, field: 'thinnerId' } as const;
  if (step.thinnerId !== '')
    return chosenProduct({ products, id: step.thinnerId, kinds: ['thinner'], place, user: label });
  if (liquid === null || liquid.waterborne) return { product: null, problems: [] };
  return {
    product: null,
    problems: [
      {
        code: 'step-product-missing',
        severity: 'warning',
        at: place,
        message: `${label} is thinned, but no thinner is chosen, so none is on the buy list.`,
        wayOut: 'Choose the thinner this step is thinned with.',
      },
    ],
  };
}
