import type { Problem } from '../problem.ts';
import type { Product } from '../product.ts';
import type { Blend, RecipeStep } from '../project-input.ts';
import { blendLiquid } from './blend-liquid.ts';
import { chosenProduct } from './chosen-product.ts';
import type { Liquid } from './liquid.ts';
import { productLiquid } from './product-liquid.ts';

/**
 * What does a coat step lay on: its product, or its blend?
 *
 * @param step a step of a coat kind
 * @param label the step in words
 * @returns the liquid, or null with the reason: nothing chosen, both chosen, or a choice that cannot be used
 *
 * No source: it only looks up what the step names.
 */
export function stepLiquid({
  step,
  label,
  products,
  blends,
}: {
  readonly step: RecipeStep;
  readonly label: string;
  readonly products: ReadonlyMap<string, Product>;
  readonly blends: ReadonlyMap<string, Blend>;
}): { readonly liquid: Liquid | null; readonly problems: readonly Problem[] } {
  const { id, productId, blendId } = step;
  if (productId !== '' && blendId !== '')
    return refused({
      code: 'step-value-invalid',
      severity: 'error',
      at: { table: 'steps', id, field: 'blendId' },
      message: `${label} names both a product and a blend.`,
      wayOut: 'Clear one of the two.',
    });
  if (blendId !== '') {
    const blend = blends.get(blendId);
    if (blend !== undefined) return blendLiquid({ blend, products });
    return refused({
      code: 'blend-unknown',
      severity: 'error',
      at: { table: 'steps', id, field: 'blendId' },
      message: `${label} names the blend "${blendId}", which this project does not have.`,
      wayOut: 'Choose a blend of this project, or a product.',
    });
  }
  if (productId === '')
    return refused({
      code: 'step-product-missing',
      severity: 'error',
      at: { table: 'steps', id, field: 'productId' },
      message: `${label} has no product, so its litres are unknown.`,
      wayOut: 'Choose the finish or the blend this step lays on.',
    });
  const place = { table: 'steps', id, field: 'productId' } as const;
  const { product, problems } = chosenProduct({
    products,
    id: productId,
    kinds: ['finish'],
    place,
    user: label,
  });
  if (product === null) return { liquid: null, problems };
  const read = productLiquid({ product, products, place, user: label });
  return { liquid: read.liquid, problems: [...problems, ...read.problems] };
}

function refused(problem: Problem): { readonly liquid: null; readonly problems: readonly Problem[] } {
  return { liquid: null, problems: [problem] };
}
