import type { Problem } from '../problem.ts';
import type { Product } from '../product.ts';
import type { Blend, BlendComponent } from '../project-input.ts';
import { blendCoverage } from './blend-coverage.ts';
import { blendIngredients } from './blend-ingredients.ts';
import { blendSplit } from './blend-split.ts';
import { chosenProduct } from './chosen-product.ts';
import type { CoverageEnd } from './coverage-ends.ts';
import type { Liquid } from './liquid.ts';
import { productLiquid } from './product-liquid.ts';
import type { Reading } from './read-figure.ts';

interface ReadComponent {
  readonly parts: number;
  readonly liquid: Liquid;
}

/**
 * What does a step lay on when it names a blend?
 *
 * @param blend parts by volume of finish products; parts of 0 are left out
 * @returns the liquid, or null when the blend is empty or holds something that cannot be reckoned with. Coverage is
 *   the volume-weighted mean (`blendCoverage`), unknown when one component's is; so is the first-coat factor, by a
 *   rule of ours, with 1 for a component that has none; pot life is the shortest of the two-part components.
 *
 * Source: `blendCoverage`, `blendSplit`, and the catalogue's figures with their own evidence.
 */
export function blendLiquid({
  blend,
  products,
}: {
  readonly blend: Blend;
  readonly products: ReadonlyMap<string, Product>;
}): { readonly liquid: Liquid | null; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const components: ReadComponent[] = [];
  let broken = false;
  for (const component of blend.components) {
    const read = readComponent(blend, component, products);
    problems.push(...read.problems);
    if (read.liquid !== null) components.push({ parts: component.parts, liquid: read.liquid });
    else if (component.parts !== 0) broken = true;
  }
  if (broken) return { liquid: null, problems };
  if (components.length === 0) return { liquid: null, problems: [...problems, blendEmpty(blend)] };
  return { liquid: mix(blend, components), problems };
}

function readComponent(
  blend: Blend,
  { id, productId, parts }: BlendComponent,
  products: ReadonlyMap<string, Product>,
): { readonly liquid: Liquid | null; readonly problems: readonly Problem[] } {
  if (parts === 0) return { liquid: null, problems: [] };
  if (!Number.isFinite(parts) || parts < 0)
    return { liquid: null, problems: [partsInvalid(blend, id, parts)] };
  const place = { table: 'components', id, field: 'productId' } as const;
  const user = `The blend "${blend.name}"`;
  const { product, problems } = chosenProduct({ products, id: productId, kinds: ['finish'], place, user });
  if (product === null) return { liquid: null, problems };
  const read = productLiquid({ product, products, place, user });
  return { liquid: read.liquid, problems: [...problems, ...read.problems] };
}

function mix(blend: Blend, components: readonly ReadComponent[]): Liquid {
  const parts = components.map((component) => component.parts);
  const shares = blendSplit({ litres: 1, parts });
  const factors = components.map(({ liquid }) => liquid.firstCoatFactor);
  const twoPart = components.filter(({ liquid }) => liquid.twoPart).map(({ liquid }) => liquid.potLife);
  return {
    name: blend.name,
    coverage: {
      low: coverageAt('low', components),
      typical: coverageAt('typical', components),
      high: coverageAt('high', components),
    },
    firstCoatFactor: {
      value: factors.reduce((sum, { value }, index) => sum + value * (shares[index] ?? 0), 0),
      source: 'volume-weighted mean of the components',
      notes: factors.flatMap(({ notes }) => notes),
    },
    ingredients: blendIngredients(components),
    twoPart: twoPart.length > 0,
    potLife: twoPart.reduce(shorter, { value: null, source: '', notes: [] }),
    waterborne: components.every(({ liquid }) => liquid.waterborne),
    film: null,
  };
}

function coverageAt(end: CoverageEnd, components: readonly ReadComponent[]): Reading {
  return {
    value: blendCoverage(
      components.map(({ parts, liquid }) => ({ parts, coverageM2PerL: liquid.coverage[end].value })),
    ),
    source: `volume-weighted mean: ${components
      .map(({ parts, liquid }) => {
        const { value, source } = liquid.coverage[end];
        return `${parts} x ${liquid.name} at ${value ?? 'unknown'} m2/L (${source})`;
      })
      .join('; ')}`,
    notes: components.flatMap(({ liquid }) => liquid.coverage[end].notes),
  };
}

function shorter(left: Reading, right: Reading): Reading {
  if (left.source === '') return right;
  if (left.value === null || right.value === null) return { ...left, value: null };
  return right.value < left.value ? right : left;
}

function blendEmpty(blend: Blend): Problem {
  return {
    code: 'blend-empty',
    severity: 'error',
    at: { table: 'blends', id: blend.id, field: null },
    message: `The blend "${blend.name}" has no component with parts above 0.`,
    wayOut: 'Add its products with their parts by volume.',
  };
}

function partsInvalid(blend: Blend, id: string, parts: number): Problem {
  return {
    code: 'step-value-invalid',
    severity: 'error',
    at: { table: 'components', id, field: 'parts' },
    message: `A component of the blend "${blend.name}" has ${parts} parts, which is not 0 or more.`,
    wayOut: 'Enter its parts by volume as a number above 0.',
  };
}
