import type { Product } from '../../../server/planning/product.ts';

/** Words that occur in species and colours, and the token of the tone they have. */
const TONES = [
  ['walnut', '--wood-walnut'],
  ['wenge', '--wood-walnut'],
  ['cherry', '--wood-cherry'],
  ['mahogany', '--wood-cherry'],
  ['oak', '--wood-oak'],
  ['ash', '--wood-oak'],
  ['maple', '--wood-pale'],
  ['birch', '--wood-birch'],
  ['beech', '--wood-birch'],
  ['pine', '--wood-pine'],
  ['white', '--tone-white'],
  ['black', '--tone-black'],
  ['grey', '--tone-grey'],
  ['gray', '--tone-grey'],
] as const;

/** A CSS colour for the small square that stands for a banding product. */
export function productSwatch(product: Product): string {
  const words =
    `${product.choices.species ?? ''} ${product.choices.colour ?? ''} ${product.name}`.toLowerCase();
  const tone = TONES.find(([word]) => words.includes(word));
  return `var(${tone?.[1] ?? '--birch'})`;
}
