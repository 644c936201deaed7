import type { WorkingInput } from '../figure.ts';
import { blendSplit } from './blend-split.ts';
import type { Ingredient, Liquid } from './liquid.ts';

/**
 * Into which products does a litre of a blend fall?
 *
 * @param components parts by volume, above 0, and the liquid of each
 * @returns each product once with its share by volume: a product named twice adds up, a two-part one falls on base
 *   and hardener; null where a mixing ratio is not known
 *
 * Source: `blendSplit`.
 * Example: 2 parts of a two-part stain mixed 3 : 1, and 1 part of another: 1/2, 1/6 and 1/3.
 */
export function blendIngredients(
  components: readonly { readonly parts: number; readonly liquid: Liquid }[],
): readonly Ingredient[] {
  const shares = blendSplit({ litres: 1, parts: components.map(({ parts }) => parts) });
  const found = new Map<string, Ingredient>();
  const whole = components.reduce((sum, { parts }) => sum + parts, 0);
  components.forEach(({ parts, liquid }, index) => {
    const inputs: readonly WorkingInput[] = [
      { name: `parts of ${liquid.name}`, value: parts, unit: '' },
      { name: 'all parts of the blend', value: whole, unit: '' },
    ];
    for (const { product, share, inputs: ratio } of liquid.ingredients) {
      const before = found.get(product.id);
      const here = share === null ? null : share * (shares[index] ?? 0);
      found.set(product.id, {
        product,
        share: here === null || before?.share === null ? null : here + (before?.share ?? 0),
        inputs: [...(before?.inputs ?? []), ...inputs, ...ratio],
      });
    }
  });
  return [...found.values()];
}
