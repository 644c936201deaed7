import { type Figure, figure } from '../figure.ts';
import type { CoatShare } from '../plan-output.ts';
import type { Product } from '../product.ts';
import type { CoatBasis } from './coat-basis.ts';
import type { Liquid } from './liquid.ts';

/**
 * How the coat falls on products: blend components, base and hardener, thinner. Litres each; null while the coat or
 * the mixing ratio is unknown. Source: `blendSplit`, `twoPartSplit`.
 */
export function coatShares(
  liquid: Liquid,
  litres: Figure,
  thinner: { readonly product: Product; readonly litres: Figure } | null,
  { path }: CoatBasis,
): readonly CoatShare[] {
  return [
    ...liquid.ingredients.map(({ product, share, inputs }) => ({
      id: product.id,
      name: product.name,
      litres: figure(litres.value === null || share === null ? null : litres.value * share, 'L', {
        rule: 'litres of the product = litres of the coat x share of the mix',
        inputs: [
          { name: 'litres of the coat', value: litres.value, unit: 'L', from: `${path}/litres` },
          { name: 'share of the mix', value: share, unit: 'ratio' },
          ...inputs,
        ],
        ...(share === null ? { notes: ['The mixing ratio is not known.'] } : {}),
      }),
    })),
    ...(thinner === null
      ? []
      : [
          {
            id: thinner.product.id,
            name: thinner.product.name,
            litres: figure(thinner.litres.value, 'L', {
              rule: 'thinner of the coat',
              inputs: [
                { name: 'thinner', value: thinner.litres.value, unit: 'L', from: `${path}/thinnerLitres` },
              ],
            }),
          },
        ]),
  ];
}
