import { describe, expect, it } from 'vitest';
import { planBanding } from '../../../server/planning/banding/plan-banding.ts';
import { planParts } from '../../../server/planning/geometry/plan-parts.ts';
import type { BandingPlan } from '../../../server/planning/plan-output.ts';
import type { OnHand, ProjectInput } from '../../../server/planning/project-input.ts';
import { allCorners, allEdges, band, partRow, roll, sheet, smallProject } from '../geometry/small-project.ts';

function plan(input: ProjectInput) {
  const { parts } = planParts(input, new Map());
  const { banding, problems } = planBanding(input, parts);
  return {
    banding,
    codes: problems.map(({ code, at }) => `${at.table}/${at.id}/${at.field} ${code}`),
    problems,
  };
}

function one(input: ProjectInput): BandingPlan & { readonly codes: readonly string[] } {
  const { banding, codes } = plan(input);
  const [first] = banding;
  if (first === undefined) throw new Error('no banding');
  return { ...first, codes };
}

function figures({ strips, edgeM, neededM, boughtM, wastedM, rollsToBuy }: BandingPlan) {
  return [strips, edgeM, neededM, boughtM, wastedM, rollsToBuy].map(({ value }) => value);
}

const shelf = (id: string, rest = {}) =>
  partRow(id, { edgeFront: 'veneer', length: '950 mm', quantity: '10', ...rest });
const onHand = (id: string, amount: number, count: number): OnHand => ({
  id,
  productId: 'veneer',
  amount,
  count,
  lengthMm: null,
  widthMm: null,
});

describe('planBanding', () => {
  it('counts strips and metres, buys rolls and says what is left of them', () => {
    // 30 fronts of 950 mm, strips of 1000 mm: 30 m needed. 25 m at 10 twice (20) is dearer than 50 m at 19.
    const banding = one(smallProject({ parts: [shelf('1'), shelf('2', { quantity: '20' })] }));
    expect(figures(banding)).toEqual([30, 28.5, 30, 50, 20, 1]);
    expect(banding.codes).toEqual([]);
    expect(banding.rolls).toEqual([
      {
        id: '1',
        packId: 'roll 50 m',
        onHandId: null,
        label: '50 m',
        lengthMm: 50_000,
        strips: [
          { partId: '1', stripId: 'front', lengthMm: 1000, count: 10 },
          { partId: '2', stripId: 'front', lengthMm: 1000, count: 20 },
        ],
        leftMm: 20_000,
      },
    ]);
  });

  it('adds spares as long as the longest strip, of no part', () => {
    const banding = one(
      smallProject({
        parts: [shelf('1'), shelf('2', { length: '1150 mm', quantity: '1' })],
        settings: { spareStrips: 2 },
      }),
    );
    // 10 x 1.0 + 1 x 1.2 + 2 x 1.2 = 13.6 m; strips counts the eleven that are for edges.
    expect(figures(banding)).toEqual([11, 10.65, expect.closeTo(13.6, 12), 25, expect.closeTo(11.4, 12), 1]);
    expect(banding.rolls[0]?.strips).toEqual([
      { partId: '2', stripId: 'front', lengthMm: 1200, count: 1 },
      { partId: null, stripId: null, lengthMm: 1200, count: 2 },
      { partId: '1', stripId: 'front', lengthMm: 1000, count: 10 },
    ]);
  });

  it('uses rolls on hand first, shortest first, and buys the rest', () => {
    const input = smallProject({
      parts: [shelf('1', { quantity: '30' })],
      onHand: [onHand('9', 7.5, 1), onHand('8', 3.2, 2)],
    });
    const banding = one(input);
    // 3 + 3 from the short leftovers, 7 from the long one, 17 from a 25 m roll.
    expect(banding.rolls.map(({ onHandId, packId, strips }) => [onHandId, packId, strips[0]?.count])).toEqual(
      [
        ['8', null, 3],
        ['8', null, 3],
        ['9', null, 7],
        [null, 'roll 25 m', 17],
      ],
    );
    // Left over: 0.2 + 0.2 + 0.5 + 8.
    expect(figures(banding)).toEqual([30, 28.5, 30, 25, expect.closeTo(8.9, 9), 1]);
    expect(banding.rolls[0]?.label).toBe('3.20 m on hand');
  });

  it('buys nothing when the shelf holds enough, and opens no roll it does not need', () => {
    const banding = one(smallProject({ parts: [shelf('1')], onHand: [onHand('9', 10, 5)] }));
    expect(figures(banding)).toEqual([10, 9.5, 10, 0, 0, 0]);
    expect(banding.rolls).toHaveLength(1);
  });

  it('plans each product by itself, in the order of first use', () => {
    const { banding } = plan(
      smallProject({ parts: [shelf('1', { edgeBack: 'thick' }), shelf('2', { edgeFront: 'thick' })] }),
    );
    expect(banding.map(({ id, strips }) => [id, strips.value])).toEqual([
      ['veneer', 10],
      ['thick', 20],
    ]);
  });

  it('reports a strip longer than every roll at its part, and plans the others', () => {
    const table = shelf('2', {
      ...allEdges('veneer'),
      ...allCorners('100'),
      length: '9000 mm',
      width: '5000 mm',
      quantity: '1',
    });
    const products = [sheet('ply', 18), band('veneer', 0.6, 40, { packs: [roll('25 m', 25, 1000)] })];
    const input = smallProject({ parts: [shelf('1'), table], products });
    const banding = one(input);
    expect(banding.codes).toEqual(['parts/2/edgeFront strip-longer-than-roll']);
    expect(banding.rolls).toHaveLength(1);
    expect(banding.rolls[0]?.strips).toEqual([{ partId: '1', stripId: 'front', lengthMm: 1000, count: 10 }]);
    expect(banding.strips.value).toBe(11);
    expect(banding.rollsToBuy.working.notes?.join()).toContain('1 strips are longer');
    const { problems } = plan(input);
    expect(problems[0]?.message).toContain('25.00 m');
  });

  it('cuts a long strip from the shelf even where no roll on sale holds it, and reports the ones it cannot', () => {
    const products = [sheet('ply', 18), band('veneer', 0.6, 40, { packs: [roll('5 m', 5, 300)] })];
    const parts = [shelf('1', { length: '6950 mm', quantity: '2' })];
    const banding = one(smallProject({ parts, products, onHand: [onHand('9', 7, 1)] }));
    expect(banding.rollsToBuy.working.notes?.join()).toContain('1 strips are longer than every roll');
    expect(banding.rolls.map(({ onHandId, leftMm }) => [onHandId, leftMm])).toEqual([['9', 0]]);
    expect(banding.codes).toEqual(['parts/1/edgeFront strip-longer-than-roll']);
  });

  it('saves metres where no price in the project currency is known', () => {
    const dollars = [roll('25 m', 25, 100, 'USD'), roll('40 m', 40, 9999, 'USD')];
    const products = [sheet('ply', 18), band('veneer', 0.6, 40, { packs: dollars })];
    const banding = one(smallProject({ parts: [shelf('1', { quantity: '30' })], products }));
    expect(banding.rolls.map(({ label }) => label)).toEqual(['40 m']);
    expect(banding.rollsToBuy.working.notes?.join()).toContain('fewest metres');
  });

  it('says that roll lengths are unknown, and does not count to zero', () => {
    const products = [sheet('ply', 18), band('veneer', 0.6, 40, { packs: [roll('empty', 0, 100)] })];
    const banding = one(smallProject({ parts: [shelf('1')], products }));
    expect(banding.codes).toEqual(['products/veneer/packs roll-length-unknown']);
    expect(figures(banding)).toEqual([10, 9.5, 10, null, null, null]);
    const enough = one(smallProject({ parts: [shelf('1')], products, onHand: [onHand('9', 12, 1)] }));
    expect(enough.codes).toEqual([]);
    expect(enough.rollsToBuy.value).toBe(0);
  });

  it('leaves out rows it cannot reckon with and says so; with none left everything is unknown', () => {
    const parts = [shelf('1'), shelf('2', { quantity: 'many' }), shelf('3', { length: '?' })];
    const banding = one(smallProject({ parts }));
    expect(figures(banding)).toEqual([10, 9.5, 10, 25, 15, 1]);
    expect(banding.strips.working.notes?.join()).toContain('2 of 3');
    expect(banding.rollsToBuy.working.notes?.join()).toContain('2 strips of the part list are unknown');
    const none = one(smallProject({ parts: parts.slice(1) }));
    expect(figures(none)).toEqual([null, null, null, null, null, null]);
  });

  it('reports settings and shelf rows that cannot be used', () => {
    const spares = one(smallProject({ parts: [shelf('1')], settings: { spareStrips: 1.5 } }));
    expect(spares.codes).toEqual(['settings/null/spareStrips setting-invalid']);
    expect(figures(spares)).toEqual([10, 9.5, null, null, null, null]);
    const shelfRows = one(
      smallProject({ parts: [shelf('1')], onHand: [onHand('9', 0, 1), onHand('8', 5, 0.5)] }),
    );
    expect(shelfRows.codes).toEqual(['onHand/9/amount on-hand-invalid', 'onHand/8/count on-hand-invalid']);
    expect(shelfRows.rollsToBuy.value).toBe(1);
    const overhang = one(smallProject({ parts: [shelf('1')], settings: { overhangMm: Number.NaN } }));
    expect(figures(overhang)).toEqual([null, 9.5, null, null, null, null]);
  });

  it('stops at more rolls than anyone can cut', () => {
    const parts = Array.from({ length: 3 }, (_, place) => shelf(`${place}`, { quantity: '100000' }));
    const banding = one(smallProject({ parts }));
    // 300 000 strips, 50 to a 50 m roll: 6 000 rolls are planned.
    expect(banding.rollsToBuy.value).toBe(6000);
    const six = one(
      smallProject({ parts: [...parts, ...parts.map((part) => ({ ...part, id: `x${part.id}` }))] }),
    );
    expect(six.codes).toEqual(['products/veneer/null quantity-too-large']);
    expect(figures(six)).toEqual([600_000, 570_000, 600_000, null, null, null]);
  });

  it('has no plan for a part list without banding', () => {
    expect(plan(smallProject({ parts: [partRow('1')] })).banding).toEqual([]);
  });

  it('leads from its working to the part list', () => {
    const banding = one(smallProject({ parts: [shelf('1')], settings: { spareStrips: 1 } }));
    expect(banding.edgeM.working.inputs).toEqual([
      { name: 'Part 1, front', value: 9.5, unit: 'm', from: 'parts/1/strips/front/runMm' },
    ]);
    expect(banding.neededM.working.inputs.map(({ name, value }) => [name, value])).toEqual([
      ['edge', 9.5],
      ['strips', 10],
      ['overhang', 25],
      ['spare strips', 1],
      ['longest strip a roll holds', 1000],
    ]);
  });

  it('adds up: the metres of the parts are the metres of the products, and strips fill rolls without a gap', () => {
    const input = smallProject({
      parts: Array.from({ length: 40 }, (_, place) =>
        partRow(String(place), {
          ...allEdges(place % 3 === 0 ? 'veneer' : 'thick'),
          length: `${300 + 17 * place} mm`,
          width: `${200 + 7 * place} mm`,
          quantity: String(1 + (place % 4)),
          radiusFrontLeft: place % 5 === 0 ? '40' : '',
        }),
      ),
    });
    const { parts } = planParts(input, new Map());
    const { banding } = planBanding(input, parts);
    const sum = (values: readonly (number | null)[]) =>
      values.reduce<number>((all, value) => all + (value ?? 0), 0);
    expect(sum(banding.map(({ edgeM }) => edgeM.value))).toBeCloseTo(
      sum(parts.map(({ totalBandedM }) => totalBandedM.value)),
      9,
    );
    for (const { rolls, neededM, boughtM, wastedM } of banding) {
      expect((boughtM.value ?? 0) - (wastedM.value ?? 0)).toBeCloseTo(neededM.value ?? 0, 6);
      for (const { strips, lengthMm, leftMm } of rolls)
        expect(sum(strips.map((strip) => strip.count * strip.lengthMm)) + leftMm).toBeCloseTo(lengthMm, 6);
    }
  });
});
