import { describe, expect, it } from 'vitest';
import type { NeedPlan } from '../../../server/planning/plan-output.ts';
import type { ExtraLine, UsageRule } from '../../../server/planning/project-input.ts';
import { BOOKCASE_PARTS, BOOKCASE_PRODUCTS, bookcase, planned } from './bookcase.ts';
import { aPart, aProduct, aProject, aRecipe, aStep } from './sample-project.ts';

const needOf = (needs: readonly NeedPlan[], id: string): number | null | undefined =>
  needs.find((need) => need.id === id)?.need.value;

const aRule = (id: string, productId: string, per: UsageRule['per'], rate: number | null): UsageRule => ({
  id,
  productId,
  per,
  rate,
});

const anExtra = (id: string, productId: string, quantity: number): ExtraLine => ({
  id,
  productId,
  name: '',
  category: 'hardware',
  quantity,
  unitPriceMinor: null,
  supplierId: '',
});

const codes = (problems: readonly { readonly code: string; readonly at: object }[]): unknown[] =>
  problems.map(({ code, at }) => [code, ...Object.values(at)]);

describe('the need of a product', () => {
  it('adds up the coats of the bookcase to the last digit', () => {
    const { needs, problems } = planned(bookcase());
    expect(problems).toEqual([]);
    // coat by coat in the test of the recipe: 0.537625; (0.495415 + 0.4321) x 3/4 and x 1/4; 1.14921875 and a tenth;
    // 3 x 0.37175 x 4/5 and x 1/5; 4.02 / 1.5 and 4.02 / 2
    const byHand = [
      ['conditioner', 0.537625],
      ['brown-stain', 0.69563625],
      ['black-stain', 0.23187875],
      ['sealer', 1.14921875],
      ['varnish', 0.8922],
      ['hardener', 0.22305],
      ['spirits', 0.114921875],
      ['disc-120', 2.68],
      ['pad', 2.01],
    ] as const;
    expect(needs.map(({ id }) => id)).toEqual(byHand.map(([id]) => id));
    for (const [id, need] of byHand) expect(needOf(needs, id)).toBeCloseTo(need, 12);
  });

  it('is known at each end of the coverage range', () => {
    const { needs } = planned(bookcase());
    const conditioner = needs.find(({ id }) => id === 'conditioner');
    expect(conditioner?.needAtLowCoverage.value).toBeCloseTo(0.537625, 12);
    expect(conditioner?.needAtTypicalCoverage.value).toBeCloseTo(0.4321, 12); // 4.02 / 10 x 1.05 + 0.01
    expect(conditioner?.needAtHighCoverage.value).toBeCloseTo(0.36175, 12); // 4.02 / 12 x 1.05 + 0.01
    const hardener = needs.find(({ id }) => id === 'hardener');
    // 3 x (4.02 / 15 x 1.05 + 0.02) / 5
    expect(hardener?.needAtHighCoverage.value).toBeCloseTo(0.18084, 12);
    const disc = needs.find(({ id }) => id === 'disc-120');
    expect(disc?.needAtHighCoverage.value).toBe(disc?.need.value);
  });

  it('names each coat it comes from, with its path', () => {
    const { needs } = planned(bookcase());
    const brown = needs.find(({ id }) => id === 'brown-stain');
    expect(brown?.category).toBe('finish');
    expect(brown?.need.unit).toBe('L');
    expect(brown?.need.working.inputs.map(({ name, from }) => [name, from])).toEqual([
      ['recipe 3: stain 1', 'recipes/3/coats/12-1/shares/brown-stain/litres'],
      ['recipe 3: stain 2', 'recipes/3/coats/12-2/shares/brown-stain/litres'],
    ]);
  });

  it('is none for a recipe no part wears', () => {
    expect(planned(bookcase({ parts: [] }), []).needs).toEqual([]);
  });

  it('says what is missing from it: an unknown coat, a row without a size', () => {
    const parts = [
      aPart({ id: '1', pieces: 1, showM2: 6, showRecipeId: '3' }),
      aPart({ id: '2', pieces: null, showM2: 6, showRecipeId: '3' }),
    ];
    const steps = [
      aStep('1', 'topcoat', { productId: 'sealer' }),
      aStep('2', 'topcoat', { productId: 'sealer', transferEfficiency: 7 }),
    ];
    const input = bookcase({ parts: parts.map(({ row }) => row), recipes: [aRecipe('3', steps)] });
    const [sealer] = planned(input, parts).needs;
    expect(sealer?.need.value).toBeCloseTo(0.984375, 12); // 6 / 8 x 1.25 x 1.05
    expect(sealer?.need.working.notes).toEqual([
      '1 of 2 uses is unknown and left out of the sum.',
      'recipe 3: 1 of 2 part areas is unknown and left out of the sum.',
    ]);
  });

  it('stays unknown, not smaller, when the number of coats cannot be used', () => {
    const parts = [aPart({ id: '1', pieces: 1, showM2: 6, showRecipeId: '3' })];
    const steps = [aStep('1', 'topcoat', { productId: 'sealer', coats: 0 })];
    const input = bookcase({ parts: parts.map(({ row }) => row), recipes: [aRecipe('3', steps)] });
    expect(planned(input, parts).needs.map(({ id, need }) => [id, need.value])).toEqual([['sealer', null]]);
  });

  it('is converted to grams by density, and unknown without one', () => {
    const parts = [aPart({ id: '1', pieces: 1, showM2: 6, showRecipeId: '3' })];
    const at = (figures: Parameters<typeof aProduct>[2]): number | null | undefined => {
      const input = aProject({
        parts: parts.map(({ row }) => row),
        recipes: [aRecipe('3', [aStep('1', 'topcoat', { productId: 'oil' })])],
        products: [aProduct('oil', 'finish', figures, { unit: 'g' })],
      });
      return needOf(planned(input, parts).needs, 'oil');
    };
    expect(at({ coverage: 12, density: 900 })).toBe(450); // 6 / 12 = 0.5 L x 900 g/L
    expect(at({ coverage: 12 })).toBeNull();
  });
});

describe('a usage rule', () => {
  const withRules = (...rules: readonly UsageRule[]) => planned(bookcase({ rules }));

  it.each([
    ['finish-area', 0.5, 2.01], // 4.02 m2 finished x 0.5
    ['coat-area', 0.5, 14.07], // 4.02 m2 x 7 coats x 0.5
    ['banding-metre', 0.5, 4.2], // (2.4 + 6) m x 0.5
    ['part', 0.5, 6], // (4 + 2 + 1 + 5) pieces x 0.5
    ['project', 0.5, 0.5],
    ['project', 0, undefined],
  ] as const)('per %s at %s comes to %s', (per, rate, need) => {
    const { needs, problems } = withRules(aRule('1', 'rag', per, rate));
    const found = needOf(needs, 'rag');
    if (need === undefined) expect(found).toBeUndefined();
    else expect(found).toBeCloseTo(need, 12);
    expect(problems).toEqual([]);
  });

  it('without a rate takes the rate of the product: by the metre, by the square metre, by the piece', () => {
    expect(needOf(withRules(aRule('1', 'glue', 'banding-metre', null)).needs, 'glue')).toBeCloseTo(126, 12); // 8.4 x 15
    expect(needOf(withRules(aRule('1', 'rag', 'finish-area', null)).needs, 'rag')).toBeCloseTo(1.005, 12); // 4.02 / 4
    const products = [aProduct('filler', 'filler', { usePerArea: 30 })];
    const parts = BOOKCASE_PARTS;
    const input = aProject({
      parts: parts.map(({ row }) => row),
      recipes: [aRecipe('3', [aStep('1', 'cure')])],
      rules: [aRule('1', 'filler', 'finish-area', null)],
      products,
    });
    expect(needOf(planned(input).needs, 'filler')).toBeCloseTo(120.6, 12); // 4.02 x 30
  });

  it('adds to the coats of the same product', () => {
    const { needs } = withRules(aRule('1', 'spirits', 'project', 0.25));
    expect(needOf(needs, 'spirits')).toBeCloseTo(0.364921875, 12); // 0.114921875 + 0.25
  });

  it('without any rate is a problem and an unknown need', () => {
    for (const per of ['finish-area', 'part', 'project'] as const) {
      const { needs, problems } = withRules(aRule('1', 'filler', per, null));
      expect(codes(problems)).toEqual([['usage-rate-missing', 'rules', '1', 'rate']]);
      expect(needOf(needs, 'filler')).toBeNull();
    }
  });

  it('of a rate below 0, an unknown product or a sheet is a problem', () => {
    expect(codes(withRules(aRule('1', 'rag', 'part', -1)).problems)).toEqual([
      ['usage-rate-invalid', 'rules', '1', 'rate'],
    ]);
    expect(codes(withRules(aRule('1', 'nowhere', 'part', 1)).problems)).toEqual([
      ['product-unknown', 'rules', '1', 'productId'],
    ]);
    const input = bookcase({
      rules: [aRule('1', 'birch', 'part', 1)],
      products: [...BOOKCASE_PRODUCTS, aProduct('birch', 'sheet')],
    });
    expect(codes(planned(input).problems)).toEqual([['product-wrong-kind', 'rules', '1', 'productId']]);
  });
});

describe('a line added by hand', () => {
  it('adds to the need of its product', () => {
    const { needs } = planned(bookcase({ extras: [anExtra('1', 'hinge', 8), anExtra('2', 'sealer', 1)] }));
    expect(needOf(needs, 'hinge')).toBe(8);
    expect(needOf(needs, 'sealer')).toBeCloseTo(2.14921875, 12); // 1.14921875 + 1
  });

  it('of an impossible quantity or product is a problem', () => {
    const { needs, problems } = planned(
      bookcase({ extras: [anExtra('1', 'hinge', -8), anExtra('2', 'nowhere', 1)] }),
    );
    expect(codes(problems)).toEqual([
      ['extra-invalid', 'extras', '1', 'quantity'],
      ['product-unknown', 'extras', '2', 'productId'],
    ]);
    expect(needOf(needs, 'hinge')).toBeNull();
  });

  it('without a product is left to the buy list', () => {
    const { needs } = planned(bookcase({ extras: [anExtra('1', '', 8)] }));
    expect(needs.some(({ category }) => category === 'hardware')).toBe(false);
  });
});
