import type { Problem, ProblemPlace } from '../problem.ts';
import type { Product } from '../product.ts';
import { coverageEnds } from './coverage-ends.ts';
import type { Liquid } from './liquid.ts';
import { productIngredients } from './product-ingredients.ts';
import { readFigure } from './read-figure.ts';

/**
 * What does a step lay on when it names one product? A two-part product brings its hardener along.
 *
 * @param product a finish
 * @param place where the row that names it sits, for the problems
 * @param user that row in words
 * @returns the liquid; coverage, pot life or ratio are null where unknown, with a problem each
 *
 * Source: the catalogue's figures with their own evidence. Coverage of a two-part product is that of the mix.
 */
export function productLiquid({
  product,
  products,
  place,
  user,
}: {
  readonly product: Product;
  readonly products: ReadonlyMap<string, Product>;
  readonly place: ProblemPlace;
  readonly user: string;
}): { readonly liquid: Liquid; readonly problems: readonly Problem[] } {
  const { ingredients, twoPart, problems } = productIngredients(product, products, place, user);
  const coverage = coverageEnds(product);
  const potLife = readFigure(product, 'potLife');
  const factor = readFigure(product, 'firstCoatFactor');
  const solids = readFigure(product, 'solidsByVolume').value;
  const dryFilmUm = readFigure(product, 'dryFilm').value;
  return {
    liquid: {
      name: product.name,
      coverage,
      firstCoatFactor:
        factor.value === null
          ? {
              value: 1,
              source: '',
              notes: [`No first-coat factor is known for "${product.name}"; 1 is used.`],
            }
          : { ...factor, value: factor.value },
      ingredients,
      twoPart,
      potLife,
      waterborne: product.choices.carrier === 'water',
      film:
        solids === null || solids > 100 || dryFilmUm === null ? null : { solidsPercent: solids, dryFilmUm },
    },
    problems: [
      ...problems,
      ...(coverage.typical.value === null ? [coverageMissing(product, place, user)] : []),
      ...(twoPart && potLife.value === null ? [potLifeUnknown(product, place, user)] : []),
    ],
  };
}

function coverageMissing(product: Product, at: ProblemPlace, user: string): Problem {
  return {
    code: 'coverage-missing',
    severity: 'error',
    at,
    message: `${user} uses "${product.name}", whose coverage is not known, so its litres are unknown.`,
    wayOut: "Enter the product's coverage, or its solids and dry film, in the catalogue.",
  };
}

function potLifeUnknown(product: Product, at: ProblemPlace, user: string): Problem {
  return {
    code: 'pot-life-unknown',
    severity: 'warning',
    at,
    message: `${user} uses the two-part "${product.name}", whose pot life is not known, so the number of mixes is unknown.`,
    wayOut: "Enter the product's pot life from its label in the catalogue.",
  };
}
