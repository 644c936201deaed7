import type { ScreenBook } from '../fields/screen-book.ts';
import { productSwatch } from '../screens/parts/product-swatch.ts';

/** Steps that give a face its colour; clear coats leave the wood's own. */
const COLOURING = ['stain', 'topcoat', 'seal'] as const;

/** A CSS colour that hints at what a recipe looks like on the wood; null when the face gets no finish. */
export function finishTone(book: ScreenBook, recipeId: string): string | null {
  if (recipeId === '') return null;
  const { steps, components } = book.project.rows;
  const coats = steps.filter((step) => step.recipeId === recipeId);
  for (const kind of COLOURING) {
    for (const step of coats.filter((one) => one.kind === kind)) {
      const productId =
        step.productId || components.find((component) => component.blendId === step.blendId)?.productId || '';
      const product = book.products.get(productId);
      const colours = product?.choices.role === 'stain' || product?.choices.role === 'paint';
      if (product !== undefined && colours) return productSwatch(product);
    }
  }
  return 'var(--birch)';
}
