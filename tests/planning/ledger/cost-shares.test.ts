import { describe, expect, it } from 'vitest';
import type { CostItem } from '../../../server/planning/ledger/cost-item.ts';
import { costShares } from '../../../server/planning/ledger/cost-shares.ts';
import { partUses } from '../../../server/planning/ledger/part-uses.ts';
import { plan } from '../../../server/planning/plan.ts';
import type { PartInput } from '../../../server/planning/project-input.ts';
import { aPack, aPart, aProduct, aProject, aRecipe, aStep } from '../finish/sample-project.ts';

const part = (
  id: string,
  quantity: string,
  length: string,
  width: string,
  more: Partial<PartInput> = {},
) => ({
  ...aPart({ id, pieces: 1 }).row,
  quantity,
  length,
  width,
  materialId: 'ply',
  edgeFront: 'hidden',
  edgeBack: 'hidden',
  edgeLeft: 'hidden',
  edgeRight: 'hidden',
  ...more,
});

const ply = aProduct(
  'ply',
  'sheet',
  { thicknessActual: 18 },
  {
    packs: [aPack('sheet', 1, 10000, { lengthMm: 2440, widthMm: 1220 })],
  },
);
const pine = aProduct(
  'pine',
  'board',
  { thicknessActual: 19, width: 89 },
  { packs: [aPack('board', 3, 1200)] },
);
const varnish = aProduct(
  'varnish',
  'finish',
  { coverage: 10 },
  {
    choices: { role: 'topcoat' },
    packs: [aPack('can', 1, 2500)],
  },
);
const glue = aProduct('glue', 'glue', {}, { packs: [aPack('pot', 500, 700)] });

const item = (
  category: CostItem['category'],
  productId: string | null,
  totalMinor: number | null,
): CostItem => ({ name: 'item', category, productId, netMinor: null, totalMinor });

describe('what the parts cost', () => {
  // Side: 2 x 1.0 m x 0.4 m = 0.8 m2, finished on one face; shelf: 1 x 0.5 m x 0.4 m = 0.2 m2, not finished.
  const input = aProject({
    products: [ply, varnish, glue, pine],
    recipes: [aRecipe('clear', [aStep('1', 'topcoat', { productId: 'varnish' })])],
    parts: [
      part('side', '2', '1000', '400', { section: 'case', showRecipeId: 'clear' }),
      part('shelf', '1', '500', '400', { section: 'inside' }),
    ],
    rules: [{ id: '1', productId: 'glue', per: 'part', rate: 10 }],
  });
  const made = plan(input);
  const costs = (items: readonly CostItem[]) =>
    costShares(items, input, made).parts.map(({ cost }) => cost.value);

  it('is each one’s share of what it takes: sheets by area, coats by the area they cover, rates by what they count', () => {
    expect(costs([item('sheets', 'ply', 10000)])).toEqual([8000, 2000]);
    expect(costs([item('finish', 'varnish', 2500)])).toEqual([2500, 0]);
    // Two pieces and one: 466.67 and 233.33.
    expect(costs([item('glue', 'glue', 700)])).toEqual([467, 233]);
  });

  it('and of what no part takes by itself, as what the part costs under the same heading, or in all', () => {
    // Sheets 80 to 20, so another thing under sheets goes 80 to 20 too.
    expect(costs([item('sheets', 'ply', 10000), item('sheets', null, 1000)])).toEqual([8800, 2200]);
    // Delivery follows all that the parts take: 8000 + 2500 to 2000, so of 1250: 1050 and 200.
    expect(
      costs([item('sheets', 'ply', 10000), item('finish', 'varnish', 2500), item('other', null, 1250)]),
    ).toEqual([11550, 2200]);
    // With nothing else known, by pieces.
    expect(costs([item('hardware', 'hinge', 300)])).toEqual([200, 100]);
  });

  it('says what each heading has in it', () => {
    const { parts } = costShares(
      [item('sheets', 'ply', 10000), item('finish', 'varnish', 2500), item('other', null, 1250)],
      input,
      made,
    );
    expect(parts[0]?.cost.working.inputs.map(({ name, value }) => [name, value])).toEqual([
      ['sheets: what it takes', 8000],
      ['finish: what it takes', 2500],
      ['other: its share of what no part takes by itself', 1050],
    ]);
  });

  it('adds up over the sections, with the cost of a square metre finished', () => {
    const { sections, parts } = costShares([item('sheets', 'ply', 10000)], input, made);
    // The sides have one face finished each: 0.8 m2 in all, 8000 / 0.8 = 10000.
    expect(sections.map(({ id, cost, perM2 }) => [id, cost.value, perM2.value])).toEqual([
      ['case', 8000, 10000],
      ['inside', 2000, null],
    ]);
    expect(parts.map(({ id }) => id)).toEqual(['side', 'shelf']);
  });

  it('leaves out what has no known price, and shares money that came back as it shared what went out', () => {
    expect(costs([item('sheets', 'ply', null)])).toEqual([0, 0]);
    expect(costs([item('sheets', 'ply', 10000), item('sheets', null, -1000)])).toEqual([7200, 1800]);
  });

  it('counts a substitute where it stands in for another product', () => {
    const replaced = { ...input, substitutes: [{ id: '1', productId: 'ply', substituteId: 'other-ply' }] };
    const { parts } = costShares([item('sheets', 'other-ply', 10000)], replaced, made);
    expect(parts.map(({ cost }) => cost.value)).toEqual([8000, 2000]);
  });

  it('has no parts to share over in a project without pieces', () => {
    const empty = aProject();
    expect(costShares([item('sheets', 'ply', 100)], empty, plan(empty))).toEqual({ parts: [], sections: [] });
  });

  it('shares boards by length and banding by its strips', () => {
    const tape = aProduct('tape', 'banding', { thicknessActual: 0.5, width: 22 });
    const banded = aProject({
      products: [pine, tape, ply],
      settings: { overhangMm: 0 },
      parts: [
        part('rail', '3', '600', '80', { materialId: 'pine' }),
        part('post', '1', '900', '80', { materialId: 'pine' }),
        part('shelf', '2', '500', '300', { edgeFront: 'tape' }),
        part('top', '1', '1000', '300', { edgeFront: 'tape', edgeLeft: 'tape' }),
      ],
    });
    const uses = partUses(banded, plan(banded));
    const shares = (id: string) => {
      const weights = uses.get(id) ?? [];
      const sum = weights.reduce((one, other) => one + other, 0);
      return weights.map((weight) => weight / sum);
    };
    // 3 x 600 mm of 2700 mm; 900 mm.
    expect(shares('pine').map((share) => share * 3)).toEqual([2, 1, 0, 0]);
    // 2 x 500 = 1000 mm; 1000 + 300 = 1300 mm.
    expect(shares('tape')[2]).toBeCloseTo(1000 / 2300, 12);
    expect(shares('tape')[3]).toBeCloseTo(1300 / 2300, 12);
  });
});
