import type { StepRow } from '../../../server/http/contract.ts';
import type { FinishRole, Product } from '../../../server/planning/product.ts';
import type { StepKind } from '../../../server/planning/project-input.ts';
import type { Choice } from '../../fields/choice-input.ts';
import { productChoices } from '../../fields/products-of.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { ABRASIVE_STEPS } from './words.ts';

/** A blend and a product may have the same id, so choices say which they are. */
const BLEND = 'blend:';
const PRODUCT = 'product:';

const ROLES: Readonly<Partial<Record<StepKind, readonly FinishRole[]>>> = {
  condition: ['conditioner'],
  stain: ['stain'],
  seal: ['sealer', 'primer'],
  topcoat: ['topcoat', 'paint', 'oil'],
};

/** What a step can use: blends of this project, products made for that step, then every other finish. */
export function stepProductChoices({ catalogue, project }: ScreenBook, step: StepRow): readonly Choice[] {
  if (ABRASIVE_STEPS.includes(step.kind))
    return productChoices(catalogue, ['abrasive'], step.productId, 'no abrasive').map(asProduct);
  const roles = ROLES[step.kind] ?? [];
  const made = 'Made for this step';
  const group = (product: Product): string =>
    product.choices.role !== undefined && roles.includes(product.choices.role) ? made : 'Other finishes';
  const products = productChoices(catalogue, ['finish'], step.productId, 'not chosen', group).filter(
    (choice) => hardenerStands(choice, catalogue.products, step.productId),
  );
  const [none, ...rest] = products.map(asProduct);
  const blends = project.rows.blends.map(({ id, name }) => ({
    value: `${BLEND}${id}`,
    text: name === '' ? 'blend without a name' : name,
    group: 'Blends of this project',
  }));
  const first = rest.filter((choice) => choice.group === made);
  const others = rest.filter((choice) => choice.group !== made);
  return [
    none ?? { value: PRODUCT, text: 'not chosen' },
    ...(step.kind === 'stain' ? blends : []),
    ...first,
    ...(step.kind === 'stain' ? [] : blends),
    ...others,
  ];
}

/** A hardener is mixed in by its base; alone it is no coat. */
function hardenerStands(choice: Choice, products: readonly Product[], chosenId: string): boolean {
  const product = products.find(({ id }) => id === choice.value);
  return product?.choices.role !== 'hardener' || product.id === chosenId;
}

function asProduct(choice: Choice): Choice {
  return { ...choice, value: `${PRODUCT}${choice.value}` };
}

export function stepProductValue(step: StepRow): string {
  return step.blendId === '' ? `${PRODUCT}${step.productId}` : `${BLEND}${step.blendId}`;
}

/** The two fields of the step that a choice stands for. */
export function stepProductFields(value: string): { readonly productId: string; readonly blendId: string } {
  return value.startsWith(BLEND)
    ? { productId: '', blendId: value.slice(BLEND.length) }
    : { productId: value.slice(PRODUCT.length), blendId: '' };
}
