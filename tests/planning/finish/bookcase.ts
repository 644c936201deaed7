import { planFinish } from '../../../server/planning/finish/plan-finish.ts';
import { planNeeds } from '../../../server/planning/finish/plan-needs.ts';
import type { NeedPlan, RecipePlan } from '../../../server/planning/plan-output.ts';
import type { Problem } from '../../../server/planning/problem.ts';
import type { ProjectInput } from '../../../server/planning/project-input.ts';
import { aPart, aProduct, aProject, aRecipe, aStep } from './sample-project.ts';

/** A recipe of eight steps on a mixed part list, small enough to reckon by hand. */
export const BOOKCASE_PARTS = [
  // 4 x (0.27 + 0.27 + 0.03) = 2.28 m2
  aPart({
    id: '1',
    pieces: 4,
    showM2: 0.27,
    backM2: 0.27,
    edgeM2: 0.03,
    bandedM: 2.4,
    showRecipeId: '3',
    backRecipeId: '3',
  }),
  // 2 x (0.45 + 0.05) = 1.00 m2; the back face stays bare
  aPart({ id: '2', pieces: 2, showM2: 0.45, backM2: 0.45, edgeM2: 0.05, bandedM: 6, showRecipeId: '3' }),
  // 1 x (0.72 + 0.02) = 0.74 m2; the edges follow the back face
  aPart({ id: '3', pieces: 1, showM2: 0.72, backM2: 0.72, edgeM2: 0.02, backRecipeId: '3' }),
  aPart({ id: '4', pieces: 5, showM2: 9, backM2: 9, edgeM2: 9 }),
];

export const BOOKCASE_PRODUCTS = [
  aProduct('disc-120', 'abrasive', { areaPerPiece: 1.5 }),
  aProduct('pad', 'abrasive', { areaPerPiece: 2 }),
  aProduct('conditioner', 'finish', { coverage: [8, 10, 12] }),
  aProduct(
    'brown-stain',
    'finish',
    { coverage: [9, 10, 12], firstCoatFactor: 1.2 },
    { choices: { role: 'stain' } },
  ),
  aProduct('black-stain', 'finish', { coverage: [13, 14, 16] }, { choices: { role: 'stain' } }),
  aProduct('sealer', 'finish', { coverage: [8, 9, 10], firstCoatFactor: 1.25 }),
  aProduct('spirits', 'thinner'),
  aProduct(
    'varnish',
    'finish',
    { coverage: [12, 13, 15], potLife: 20, firstCoatFactor: 1.3 },
    { choices: { hardenerId: 'hardener', mixBase: 4, mixHardener: 1 } },
  ),
  aProduct('hardener', 'finish', {}, { choices: { role: 'hardener' } }),
  aProduct('rag', 'consumable', { areaPerPiece: 4 }),
  aProduct('glue', 'glue', { usePerMetre: 15 }),
  aProduct('filler', 'filler'),
  aProduct('hinge', 'hardware'),
];

export const BOOKCASE_STEPS = [
  aStep('10', 'sand', { productId: 'disc-120' }),
  aStep('11', 'condition', { productId: 'conditioner', method: 'wipe', sessionLossL: null }),
  aStep('12', 'stain', { blendId: '7', coats: 2, method: 'wipe', sessionLossL: null }),
  aStep('13', 'seal', {
    productId: 'sealer',
    method: 'spray-hvlp',
    transferEfficiency: 0.6,
    sessionLossL: null,
    thinning: 0.1,
    thinnerId: 'spirits',
  }),
  aStep('14', 'scuff', { productId: 'pad' }),
  aStep('15', 'topcoat', { productId: 'varnish', coats: 3, method: 'brush', sessionLossL: null }),
  aStep('16', 'dust'),
  aStep('17', 'cure'),
];

export function bookcase(more: Parameters<typeof aProject>[0] = {}): ProjectInput {
  return aProject({
    parts: BOOKCASE_PARTS.map(({ row }) => row),
    recipes: [aRecipe('3', BOOKCASE_STEPS)],
    blends: [
      {
        id: '7',
        name: 'walnut brown',
        components: [
          { id: '71', productId: 'brown-stain', parts: 3 },
          { id: '72', productId: 'black-stain', parts: 1 },
        ],
      },
    ],
    products: BOOKCASE_PRODUCTS,
    ...more,
    settings: { coverageChoice: 'low', finishLoss: 0.05, ...more.settings },
  });
}

export function planned(
  input: ProjectInput,
  parts = BOOKCASE_PARTS,
): {
  readonly recipes: readonly RecipePlan[];
  readonly needs: readonly NeedPlan[];
  readonly problems: readonly Problem[];
} {
  const plans = parts.map(({ plan }) => plan);
  const finish = planFinish(input, plans);
  const needs = planNeeds(input, { parts: plans, banding: [], materials: [], recipes: finish.recipes });
  return { recipes: finish.recipes, needs: needs.needs, problems: [...finish.problems, ...needs.problems] };
}
