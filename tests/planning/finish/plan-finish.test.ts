import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planFinish } from '../../../server/planning/finish/plan-finish.ts';
import type { CoatPlan, RecipePlan } from '../../../server/planning/plan-output.ts';
import { BOOKCASE_PRODUCTS, BOOKCASE_STEPS, bookcase, planned } from './bookcase.ts';
import { aPart, aProduct, aProject, aRecipe, aStep } from './sample-project.ts';

function only<T>(list: readonly T[]): T {
  expect(list).toHaveLength(1);
  return list[0] as T;
}

function coat({ coats }: RecipePlan, id: string): CoatPlan {
  const found = coats.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no coat ${id} among ${coats.map((one) => one.id).join()}`);
  return found;
}

const codes = (problems: readonly { readonly code: string; readonly at: object }[]): unknown[] =>
  problems.map(({ code, at }) => [code, ...Object.values(at)]);

describe('the area of a recipe', () => {
  it('is quantity times faces and seen edges, edges following the show face, else the back', () => {
    const recipe = only(planned(bookcase()).recipes);
    expect(recipe.showM2.value).toBeCloseTo(1.98, 12); // 4 x 0.27 + 2 x 0.45
    expect(recipe.backM2.value).toBeCloseTo(1.8, 12); // 4 x 0.27 + 0.72
    expect(recipe.edgeM2.value).toBeCloseTo(0.24, 12); // 4 x 0.03 + 2 x 0.05 + 0.02
    expect(recipe.areaM2.value).toBeCloseTo(4.02, 12); // 2.28 + 1.00 + 0.74
    expect(recipe.showM2.working.inputs[0]).toEqual({
      name: 'part 1, 4 pcs',
      value: 1.08,
      unit: 'm2',
      from: 'parts/1/showFaceM2',
    });
    expect(recipe.areaM2.working.inputs.map(({ from }) => from)).toEqual([
      'recipes/3/showM2',
      'recipes/3/backM2',
      'recipes/3/edgeM2',
    ]);
  });

  it('leaves rows of unknown size or quantity out, says so, and passes the word on to the coats', () => {
    const parts = [
      aPart({ id: '1', pieces: 2, showM2: 0.5, edgeM2: 0, showRecipeId: '3' }),
      aPart({ id: '2', pieces: 2, showM2: null, edgeM2: 0, showRecipeId: '3' }),
      aPart({ id: '3', pieces: null, showM2: 0.5, edgeM2: 0, showRecipeId: '3' }),
    ];
    const input = bookcase({ parts: parts.map(({ row }) => row) });
    const recipe = only(planned(input, parts).recipes);
    const note = '2 of 3 part areas are unknown and left out of the sum.';
    expect(recipe.areaM2.value).toBe(1);
    expect(recipe.areaM2.working.notes).toEqual([note]);
    expect(coat(recipe, '11-1').litres.working.notes).toContain(note);
  });

  it('is unknown, and so are its litres, when every row is', () => {
    const parts = [aPart({ id: '1', pieces: null, showM2: 0.5, edgeM2: 0, showRecipeId: '3' })];
    const recipe = only(planned(bookcase({ parts: parts.map(({ row }) => row) }), parts).recipes);
    expect(recipe.areaM2.value).toBeNull();
    expect(coat(recipe, '11-1').litres.value).toBeNull();
    expect(coat(recipe, '11-1').litres.working.notes).toContain('Unknown because of: area.');
    expect(coat(recipe, '10-1').pieces.value).toBeNull();
  });
});

describe('a recipe of eight steps, reckoned by hand', () => {
  // 4.02 m2, low coverage, 5 % loss
  const plan = planned(bookcase());
  const recipe = only(plan.recipes);
  const litres = (id: string): number | null => coat(recipe, id).litres.value;

  it('has a coat or pass for each time a step is done, and none for waiting', () => {
    expect(recipe.coats.map(({ id }) => id)).toEqual([
      '10-1',
      '11-1',
      '12-1',
      '12-2',
      '13-1',
      '14-1',
      '15-1',
      '15-2',
      '15-3',
    ]);
    expect(plan.problems).toEqual([]);
  });

  it('wears out abrasives by area, not rounded', () => {
    expect(coat(recipe, '10-1').pieces.value).toBeCloseTo(2.68, 12); // 4.02 / 1.5
    expect(coat(recipe, '14-1').pieces.value).toBeCloseTo(2.01, 12); // 4.02 / 2
    expect(coat(recipe, '10-1').litres.value).toBeNull();
  });

  it('takes conditioner by the wiped litre', () => {
    expect(litres('11-1')).toBeCloseTo(0.537625, 12); // 4.02 / 8 x 1.05 + 0.01
    expect(coat(recipe, '11-1').litresAtTypicalCoverage.value).toBeCloseTo(0.4321, 12); // 4.02 / 10 x 1.05 + 0.01
    expect(coat(recipe, '11-1').litresAtHighCoverage.value).toBeCloseTo(0.36175, 12); // 4.02 / 12 x 1.05 + 0.01
  });

  it('takes stain by the blend, more of it on bare wood', () => {
    // low coverage (3 x 9 + 1 x 13) / 4 = 10; first-coat factor (3 x 1.2 + 1 x 1) / 4 = 1.15
    expect(litres('12-1')).toBeCloseTo(0.495415, 12); // 4.02 / 10 x 1.15 x 1.05 + 0.01
    expect(litres('12-2')).toBeCloseTo(0.4321, 12); // 4.02 / 10 x 1.05 + 0.01
    const [brown, black] = coat(recipe, '12-1').shares;
    expect(brown?.litres.value).toBeCloseTo(0.37156125, 12); // x 3 / 4
    expect(black?.litres.value).toBeCloseTo(0.12385375, 12); // x 1 / 4
    expect(coat(recipe, '12-1').litres.working.notes).toContain(
      'No first-coat factor is known for "black-stain"; 1 is used.',
    );
  });

  it('takes sealer by the sprayed litre, with a tenth of thinner on top', () => {
    // 4.02 / (8 x 0.6) = 0.8375; x 1.25 = 1.046875; x 1.05 = 1.09921875; + 0.05
    expect(litres('13-1')).toBeCloseTo(1.14921875, 12);
    expect(coat(recipe, '13-1').thinnerLitres.value).toBeCloseTo(0.114921875, 12);
    expect(coat(recipe, '13-1').shares.map(({ id }) => id)).toEqual(['sealer', 'spirits']);
  });

  it('takes varnish in base and hardener, in as many mixes as the pot life asks for', () => {
    // sealed by now, so the first-coat factor 1.3 does not apply: 4.02 / 12 x 1.05 + 0.02
    for (const id of ['15-1', '15-2', '15-3']) {
      expect(litres(id)).toBeCloseTo(0.37175, 12);
      expect(coat(recipe, id).shares[0]?.litres.value).toBeCloseTo(0.2974, 12); // x 4 / 5
      expect(coat(recipe, id).shares[1]?.litres.value).toBeCloseTo(0.07435, 12); // x 1 / 5
      expect(coat(recipe, id).mixes.value).toBe(2); // 4.02 / 0.15 = 26.8 min; over 20 min: 2
    }
    expect(coat(recipe, '13-1').mixes.value).toBeNull();
  });

  it('shows how every litre came about, with paths and sources', () => {
    expect(coat(recipe, '13-1').litres.working).toEqual({
      rule: 'litres = area / (coverage x transfer efficiency) x first-coat factor x (1 + loss) + session loss',
      inputs: [
        { name: 'area', value: recipe.areaM2.value, unit: 'm2', from: 'recipes/3/areaM2' },
        {
          name: 'coverage of sealer (low)',
          value: 8,
          unit: 'm2/L',
          source: 'label value, typical of the family',
        },
        { name: 'transfer efficiency', value: 0.6, unit: 'ratio', source: 'entered in the step' },
        {
          name: 'first-coat factor',
          value: 1.25,
          unit: 'ratio',
          source: 'label value, typical of the family',
        },
        { name: 'loss', value: 0.05, unit: 'ratio', source: 'project setting' },
        {
          name: 'session loss',
          value: 0.05,
          unit: 'L',
          source: 'spray-hvlp: common practice, no source',
        },
      ],
    });
    expect(coat(recipe, '15-2').shares[1]?.litres.working.inputs[0]).toEqual({
      name: 'litres of the coat',
      value: coat(recipe, '15-2').litres.value,
      unit: 'L',
      from: 'recipes/3/coats/15-2/litres',
    });
  });
});

describe('the coverage choice', () => {
  it('moves the litres of a coat and never its three ends', () => {
    for (const coverageChoice of ['low', 'typical', 'high'] as const) {
      const recipe = only(planned(bookcase({ settings: { coverageChoice } })).recipes);
      const one = coat(recipe, '11-1');
      const ends = {
        low: one.litresAtLowCoverage,
        typical: one.litresAtTypicalCoverage,
        high: one.litresAtHighCoverage,
      };
      expect(one.litres).toEqual(ends[coverageChoice]);
      expect(ends.low.value).toBeCloseTo(0.537625, 12);
    }
  });

  it('says when the typical coverage stands in for a missing low one', () => {
    const products = [aProduct('varnish', 'finish', { coverage: 10 })];
    const parts = [aPart({ id: '1', pieces: 1, showM2: 5, showRecipeId: '3' })];
    const input = aProject({
      parts: parts.map(({ row }) => row),
      recipes: [aRecipe('3', [aStep('1', 'topcoat', { productId: 'varnish' })])],
      products,
      settings: { coverageChoice: 'low' },
    });
    const { litres } = coat(only(planned(input, parts).recipes), '1-1');
    expect(litres.value).toBe(0.5); // 5 / 10
    expect(litres.working.notes).toContain('No low coverage is known; the typical one stands in for it.');
  });

  it('falls back on solids and dry film, and gives the wet film to aim for', () => {
    const products = [aProduct('lacquer', 'finish', { solidsByVolume: 35, dryFilm: 28 })];
    const parts = [aPart({ id: '1', pieces: 1, showM2: 5, showRecipeId: '3' })];
    const step = aStep('1', 'topcoat', { productId: 'lacquer', method: 'spray-hvlp', thinning: 0.1 });
    const input = aProject({
      parts: parts.map(({ row }) => row),
      recipes: [aRecipe('3', [step])],
      products,
    });
    const { litres } = coat(only(planned(input, parts).recipes), '1-1');
    expect(litres.value).toBeCloseTo(5 / (12.5 * 0.65), 12); // coverage 10 x 35 / 28 = 12.5, HVLP 0.65
    // 28 x 1.1 / 0.35 = 88 um
    expect(litres.working.notes?.join(' ')).toContain('about 88 um wet');
  });
});

describe('the first coat', () => {
  it('takes the factor on bare wood only: not on coat 2, and not over an earlier sealer', () => {
    const products = [aProduct('varnish', 'finish', { coverage: 10, firstCoatFactor: 1.5 })];
    const parts = [aPart({ id: '1', pieces: 1, showM2: 5, showRecipeId: '3' })];
    const steps = [
      aStep('1', 'topcoat', { productId: 'varnish', coats: 2 }),
      aStep('2', 'topcoat', { productId: 'varnish' }),
    ];
    const input = aProject({ parts: parts.map(({ row }) => row), recipes: [aRecipe('3', steps)], products });
    const recipe = only(planned(input, parts).recipes);
    expect(recipe.coats.map(({ litres }) => litres.value)).toEqual([0.75, 0.5, 0.5]); // 5 / 10 x 1.5, x 1, x 1
    expect(coat(recipe, '2-1').litres.working.inputs[3]?.source).toBe(
      'an earlier sealer or topcoat has closed the wood',
    );
  });
});

describe('a blend of two-part stains', () => {
  const twoPart = (id: string, potLife: number) =>
    aProduct(
      id,
      'finish',
      { coverage: 10, potLife },
      { choices: { hardenerId: 'hardener', mixBase: 3, mixHardener: 1 } },
    );
  const mixesOf = (...potLives: readonly [number, number]) => {
    const parts = [aPart({ id: '1', pieces: 1, showM2: 10, showRecipeId: '3' })];
    const input = aProject({
      parts: parts.map(({ row }) => row),
      recipes: [aRecipe('3', [aStep('1', 'stain', { blendId: '1', method: 'wipe' })])],
      blends: [
        {
          id: '1',
          name: 'mixed',
          components: [
            { id: '1', productId: 'a', parts: 1 },
            { id: '2', productId: 'b', parts: 3 },
          ],
        },
      ],
      products: [twoPart('a', potLives[0]), twoPart('b', potLives[1]), aProduct('hardener', 'finish')],
    });
    return coat(only(planned(input, parts).recipes), '1-1');
  };

  it('is mixed against the shorter pot life, whichever comes first', () => {
    // 10 m2 wiped at 0.25 m2/min are 40 min: over 15 min 3 mixes, over 40 min 1
    expect(mixesOf(15, 40).mixes.value).toBe(3);
    expect(mixesOf(40, 15).mixes.value).toBe(3);
    expect(mixesOf(40, 40).mixes.value).toBe(1);
  });

  it('falls on both bases, and on their common hardener once', () => {
    // 10 / 10 = 1 L: 1/4 x 3/4, 1/4 x 1/4 + 3/4 x 1/4, 3/4 x 3/4
    expect(mixesOf(40, 40).shares.map(({ id, litres }) => [id, litres.value])).toEqual([
      ['a', 0.1875],
      ['hardener', 0.25],
      ['b', 0.5625],
    ]);
  });
});

describe('a problem of a recipe', () => {
  it('is the unknown recipe of a face, an empty recipe, and one no part wears', () => {
    const parts = [aPart({ id: '1', pieces: 1, showM2: 1, showRecipeId: '9', backRecipeId: '4' })];
    const input = aProject({
      parts: parts.map(({ row }) => row),
      recipes: [aRecipe('4', []), aRecipe('5', [aStep('1', 'cure')])],
    });
    expect(codes(planned(input, parts).problems)).toEqual([
      ['recipe-unknown', 'parts', '1', 'showRecipeId'],
      ['recipe-empty', 'recipes', '4', 'steps'],
      ['recipe-unused', 'recipes', '5', null],
    ]);
  });

  it('takes no liquid at all while no part wears it, whatever stays in the gun', () => {
    const recipe = only(planned(bookcase({ parts: [] }), []).recipes);
    expect(recipe.areaM2.value).toBe(0);
    expect(recipe.coats.filter(({ method }) => method !== null).map(({ litres }) => litres.value)).toEqual(
      Array(7).fill(0),
    );
    expect(coat(recipe, '15-1').mixes.value).toBe(0);
  });
});

describe('a problem of a step', () => {
  const parts = [aPart({ id: '1', pieces: 1, showM2: 6, showRecipeId: '3' })];
  const products = [
    ...BOOKCASE_PRODUCTS,
    aProduct('old', 'finish', { coverage: 10 }, { retired: true }),
    aProduct('mystery', 'finish'),
    aProduct(
      'half',
      'finish',
      { coverage: 10, potLife: 60 },
      { choices: { hardenerId: 'gone', mixBase: 2, mixHardener: 1 } },
    ),
    aProduct('no-ratio', 'finish', { coverage: 10, potLife: 60 }, { choices: { hardenerId: 'hardener' } }),
    aProduct(
      'no-pot',
      'finish',
      { coverage: 10 },
      { choices: { hardenerId: 'hardener', mixBase: 2, mixHardener: 1 } },
    ),
    aProduct('worn', 'abrasive'),
    aProduct('watery', 'finish', { coverage: 10 }, { choices: { carrier: 'water' } }),
  ];
  const blends = [
    { id: '1', name: 'empty', components: [] },
    { id: '2', name: 'nil', components: [{ id: '21', productId: 'old', parts: 0 }] },
    { id: '3', name: 'odd', components: [{ id: '31', productId: 'sealer', parts: -1 }] },
    {
      id: '4',
      name: 'foggy',
      components: [
        { id: '41', productId: 'mystery', parts: 1 },
        { id: '42', productId: 'sealer', parts: 1 },
      ],
    },
    { id: '5', name: 'gone', components: [{ id: '51', productId: 'nowhere', parts: 1 }] },
    { id: '6', name: 'sandy', components: [{ id: '61', productId: 'worn', parts: 1 }] },
  ];
  const at = (step: Parameters<typeof aStep>[2], kind: Parameters<typeof aStep>[1] = 'topcoat') => {
    const input = aProject({
      parts: parts.map(({ row }) => row),
      recipes: [aRecipe('3', [aStep('1', kind, step)])],
      blends,
      products,
    });
    return planned(input, parts);
  };

  it.each([
    [{}, 'step-product-missing', 'steps', '1', 'productId'],
    [{ productId: 'nowhere' }, 'product-unknown', 'steps', '1', 'productId'],
    [{ productId: 'pad' }, 'product-wrong-kind', 'steps', '1', 'productId'],
    [{ productId: 'mystery' }, 'coverage-missing', 'steps', '1', 'productId'],
    [
      { productId: 'sealer', transferEfficiency: 0 },
      'transfer-efficiency-invalid',
      'steps',
      '1',
      'transferEfficiency',
    ],
    [
      { productId: 'sealer', transferEfficiency: 1.2 },
      'transfer-efficiency-invalid',
      'steps',
      '1',
      'transferEfficiency',
    ],
    [{ productId: 'sealer', sessionLossL: -1 }, 'step-value-invalid', 'steps', '1', 'sessionLossL'],
    [{ productId: 'sealer', coats: 0 }, 'step-value-invalid', 'steps', '1', 'coats'],
    [{ productId: 'sealer', coats: 2.5 }, 'step-value-invalid', 'steps', '1', 'coats'],
    [{ productId: 'sealer', coats: 21 }, 'step-value-invalid', 'steps', '1', 'coats'],
    [{ productId: 'sealer', blendId: '4' }, 'step-value-invalid', 'steps', '1', 'blendId'],
    [{ blendId: '99' }, 'blend-unknown', 'steps', '1', 'blendId'],
    [{ blendId: '1' }, 'blend-empty', 'blends', '1', null],
    [{ blendId: '2' }, 'blend-empty', 'blends', '2', null],
    [{ blendId: '3' }, 'step-value-invalid', 'components', '31', 'parts'],
    [{ blendId: '4' }, 'coverage-missing', 'components', '41', 'productId'],
    [{ blendId: '5' }, 'product-unknown', 'components', '51', 'productId'],
    [{ blendId: '6' }, 'product-wrong-kind', 'components', '61', 'productId'],
  ])('%j is %s at %s/%s/%s, once, and leaves the litres unknown', (step, ...place) => {
    const plan = at(step);
    expect(codes(plan.problems)).toEqual([place]);
    for (const one of only(plan.recipes).coats) expect(one.litres.value).toBeNull();
  });

  it.each([
    [{ productId: 'old' }, 'product-retired', 'productId'],
    [{ productId: 'half' }, 'hardener-missing', 'productId'],
    [{ productId: 'no-ratio' }, 'hardener-missing', 'productId'],
    [{ productId: 'no-pot' }, 'pot-life-unknown', 'productId'],
    [{ productId: 'sealer', thinning: 0.1 }, 'step-product-missing', 'thinnerId'],
    [{ productId: 'sealer', thinning: 0.1, thinnerId: 'rag' }, 'product-wrong-kind', 'thinnerId'],
    [{ productId: 'sealer', thinning: -0.1, thinnerId: 'spirits' }, 'step-value-invalid', 'thinning'],
    [{ productId: 'sealer', thinning: 1.1, thinnerId: 'spirits' }, 'step-value-invalid', 'thinning'],
    [{ productId: 'sealer', thinning: 10.1, thinnerId: 'spirits' }, 'step-value-invalid', 'thinning'],
    [{ productId: 'sealer', thinning: Number.NaN }, 'step-value-invalid', 'thinning'],
  ])('%j is %s at its %s, and the litres stand', (step, code, field) => {
    const plan = at(step);
    expect(codes(plan.problems)).toEqual([[code, 'steps', '1', field]]);
    expect(only(only(plan.recipes).coats).litres.value).toBeGreaterThan(0);
  });

  it('leaves base and hardener unknown without a ratio, the mixes without a pot life, the thinner without a share', () => {
    const [noRatio] = only(at({ productId: 'no-ratio' }).recipes).coats;
    expect(noRatio?.shares.map(({ litres }) => litres.value)).toEqual([null, null]);
    const [noPot] = only(at({ productId: 'no-pot' }).recipes).coats;
    expect(noPot?.mixes.value).toBeNull();
    const [noShare] = only(at({ productId: 'sealer', thinning: 11, thinnerId: 'spirits' }).recipes).coats;
    expect(noShare?.thinnerLitres.value).toBeNull();
  });

  it('thins a waterborne finish from the tap without asking for a thinner', () => {
    const plan = at({ productId: 'watery', thinning: 0.1 });
    expect(plan.problems).toEqual([]);
    const [one] = only(plan.recipes).coats;
    expect(one?.thinnerLitres.value).toBeCloseTo(0.06, 12); // 6 / 10 x 0.1
    expect(one?.shares.map(({ id }) => id)).toEqual(['watery']);
  });

  it('is a missing abrasive, a wrong one, or one of unknown service', () => {
    expect(codes(at({}, 'sand').problems)).toEqual([['step-product-missing', 'steps', '1', 'productId']]);
    expect(codes(at({ productId: 'sealer' }, 'scuff').problems)).toEqual([
      ['product-wrong-kind', 'steps', '1', 'productId'],
    ]);
    const worn = at({ productId: 'worn', coats: 2 }, 'sand');
    expect(codes(worn.problems)).toEqual([['usage-rate-missing', 'steps', '1', 'productId']]);
    expect(only(worn.recipes).coats.map(({ pieces }) => pieces.value)).toEqual([null, null]);
  });

  it('is one problem for a blend that two steps use', () => {
    const steps = [aStep('1', 'stain', { blendId: '4' }), aStep('2', 'stain', { blendId: '4' })];
    const input = aProject({
      parts: parts.map(({ row }) => row),
      recipes: [aRecipe('3', steps)],
      blends,
      products,
    });
    expect(
      codes(
        planFinish(
          input,
          parts.map(({ plan }) => plan),
        ).problems,
      ),
    ).toEqual([['coverage-missing', 'components', '41', 'productId']]);
  });

  it('is a loss setting that is no share', () => {
    const plan = planned(bookcase({ settings: { finishLoss: -0.05 } }));
    expect(codes(plan.problems)).toEqual([['setting-invalid', 'settings', null, 'finishLoss']]);
    expect(coat(only(plan.recipes), '11-1').litres.value).toBeNull();
  });

  it('tells the cabinetmaker what is wrong and what to do, in two sentences', () => {
    const problem = only(at({ productId: 'mystery' }).problems);
    expect(problem.message).toBe(
      'Step 1 (topcoat) of "recipe 3" uses "mystery", whose coverage is not known, so its litres are unknown.',
    );
    expect(problem.wayOut).toBe(
      "Enter the product's coverage, or its solids and dry film, in the catalogue.",
    );
  });
});

describe('the finish of any project', () => {
  it('needs no less for more area, and no less at low coverage than at high', () => {
    const amount = fc.double({ min: 0, max: 50, noNaN: true });
    fc.assert(
      fc.property(amount, amount, fc.integer({ min: 1, max: 40 }), (showM2, moreM2, pieces) => {
        const at = (area: number): RecipePlan => {
          const parts = [aPart({ id: '1', pieces, showM2: area, showRecipeId: '3' })];
          return only(planned(bookcase({ parts: parts.map(({ row }) => row) }), parts).recipes);
        };
        const small = at(showM2);
        const large = at(showM2 + moreM2);
        small.coats.forEach((one, index) => {
          const other = large.coats[index];
          expect(other?.litres.value ?? 0).toBeGreaterThanOrEqual(one.litres.value ?? 0);
          expect(other?.pieces.value ?? 0).toBeGreaterThanOrEqual(one.pieces.value ?? 0);
          expect(one.litresAtLowCoverage.value ?? 0).toBeGreaterThanOrEqual(
            one.litresAtHighCoverage.value ?? 0,
          );
        });
      }),
      { numRuns: 50 },
    );
  });

  it('is the same each time, and leaves its input as it was', () => {
    const input = bookcase();
    const before = structuredClone(input);
    expect(planned(input)).toEqual(planned(input));
    expect(input).toEqual(before);
    expect(BOOKCASE_STEPS).toHaveLength(8);
  });

  it('refuses a planned part the project does not have', () => {
    const stray = aPart({ id: '99', pieces: 1 });
    expect(() => planFinish(bookcase(), [stray.plan])).toThrow('99');
  });
});
