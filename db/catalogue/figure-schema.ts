import { z } from 'zod';
import {
  type Basis,
  type Evidence,
  PRODUCT_FIGURES,
  type Product,
  type ProductFigure,
  type ProductFigureName,
} from '../../server/planning/product.ts';

/**
 * How a catalogue figure, and the evidence it stands on, may be given. Unknown is null; a figure that counts
 * something is never 0, because 0 would read as "none" where "not known" is meant.
 */

/** Longest text of a catalogue field, characters. */
export const LONGEST_TEXT = 500;

/** Figures whose value may be any number (temperatures), or 0 (nothing evaporates). All others are above 0. */
const LEAST: Partial<Record<ProductFigureName, number>> = {
  flashPoint: -273.15,
  minTemperature: -273.15,
  maxTemperature: -273.15,
  voc: 0,
};
/** Figures that are a share of the whole, percent. */
const SHARES: ReadonlySet<ProductFigureName> = new Set(['solidsByVolume', 'maxHumidity']);
/** Largest value of any figure: cure times run to tens of thousands of minutes. */
const LARGEST_FIGURE = 1_000_000;

const basis = z.enum(['published', 'label', 'practice', 'memory', 'user'] satisfies Basis[]);

/** The four fields that say how far a number can be leaned on. */
export const evidenceShape = {
  basis: basis.meta({
    description: 'published and label name a source; practice, memory and user need none.',
  }),
  source: z.string().max(LONGEST_TEXT),
  readOn: z.iso.date().nullable().meta({ description: 'Date the source was read or the value entered.' }),
  note: z.exactOptional(z.string().max(LONGEST_TEXT).nullable()),
};

/** Adds the rule that a published or label figure names its source. */
export function withSource<Schema extends z.ZodType<Evidence>>(schema: Schema): Schema {
  return schema.refine(
    ({ basis, source }) => !['published', 'label'].includes(basis) || source.trim() !== '',
    { path: ['source'], message: 'must name the source of a published or label value' },
  );
}

export const evidenceSchema: z.ZodType<Evidence> = withSource(z.strictObject(evidenceShape));

function figureSchema(name: ProductFigureName): z.ZodType<ProductFigure> {
  const least = LEAST[name];
  const bounded = z.number().max(SHARES.has(name) ? 100 : LARGEST_FIGURE);
  const value = (least === undefined ? bounded.positive() : bounded.min(least)).nullable();
  return withSource(
    z.strictObject({
      low: value,
      typical: value,
      high: value,
      unit: z.literal(PRODUCT_FIGURES[name].unit),
      ...evidenceShape,
    }),
  ).refine(inOrder, { message: 'must have low <= typical <= high' });
}

function inOrder({ low, typical, high }: ProductFigure): boolean {
  const known = [low, typical, high].filter((value) => value !== null);
  return known.every((value, index) => index === 0 || (known[index - 1] ?? value) <= value);
}

/** Every figure a product may have, each in its own unit. Which kinds may have which is checked on the product. */
export const figuresSchema = z.strictObject(
  Object.fromEntries(
    (Object.keys(PRODUCT_FIGURES) as ProductFigureName[]).map((name) => [
      name,
      z.exactOptional(figureSchema(name)),
    ]),
  ),
) as unknown as z.ZodType<Product['figures']>;
