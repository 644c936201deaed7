import { beforeAll, describe, expect, it } from 'vitest';
import {
  chooseSuppliers,
  type LineOffers,
} from '../../../../server/planning/buying/suppliers/choose-suppliers.ts';
import type { SupplierTerms } from '../../../../server/planning/buying/suppliers/supplier-charges.ts';
import { loadSolver } from '../../cutting/least-cost-by-highs.ts';
import { packsOf, solvedByProgram, supplierQuestion } from './supplier-question.ts';
import { suppliersByHighs } from './suppliers-by-highs.ts';

const terms = (id: string, more: Partial<SupplierTerms> = {}): SupplierTerms => ({
  id,
  deliveryMinor: 0,
  freeFromMinor: null,
  minimumMinor: null,
  surchargeMinor: 0,
  ...more,
});
const line = (id: string, costs: Readonly<Record<string, number>>): LineOffers => ({
  id,
  offers: Object.entries(costs).map(([supplierId, costMinor]) => ({ supplierId, costMinor })),
});
const namesOf = (lines: readonly LineOffers[], chosen: readonly number[]): (string | undefined)[] =>
  lines.map(({ offers }, at) => offers[chosen[at] ?? -1]?.supplierId);

/** Every way to give each line one of its offers, one after the other. */
function everyChoice(lines: readonly LineOffers[], all: readonly SupplierTerms[]): number {
  let best = Number.POSITIVE_INFINITY;
  const visit = (at: number, goods: ReadonlyMap<string, number>): void => {
    const offers = lines[at]?.offers;
    if (offers === undefined) {
      let total = 0;
      for (const [id, sum] of goods) {
        const own = all.find((one) => one.id === id) ?? terms(id);
        total += sum;
        if (!(own.freeFromMinor !== null && sum >= own.freeFromMinor)) total += own.deliveryMinor;
        if (own.minimumMinor !== null && sum < own.minimumMinor) total += own.surchargeMinor;
      }
      best = Math.min(best, total);
      return;
    }
    if (offers.length === 0) visit(at + 1, goods);
    for (const { supplierId, costMinor } of offers)
      visit(at + 1, new Map(goods).set(supplierId, (goods.get(supplierId) ?? 0) + costMinor));
  };
  visit(0, new Map());
  return best;
}

describe('the choice of suppliers', () => {
  it('joins an order where a second delivery costs more than the difference in price', () => {
    // sealer 20.00 at A, 22.00 at B; sheets 30.00 at B only. A and B: 20 + 6 + 30 + 4 = 60.00; both at B: 52 + 4 = 56.00
    const lines = [line('sealer', { A: 2000, B: 2200 }), line('sheets', { B: 3000 })];
    const all = [terms('A', { deliveryMinor: 600 }), terms('B', { deliveryMinor: 400 })];
    const choice = chooseSuppliers({ lines, terms: all });
    expect(namesOf(lines, choice.chosen)).toEqual(['B', 'B']);
    expect(choice).toMatchObject({ totalMinor: 5600, boundMinor: 5600, proven: true, lineByLineMinor: 6000 });
  });

  it('flips to the dearer supplier where the cheaper one has a minimum order the goods do not reach', () => {
    // One can: 18.00 at A, 19.50 at B. A adds 5.00 to orders below 25.00: 23.00 against 19.50.
    const lines = [line('can', { A: 1800, B: 1950 })];
    const all = [terms('A', { minimumMinor: 2500, surchargeMinor: 500 }), terms('B')];
    expect(chooseSuppliers({ lines, terms: all })).toMatchObject({ chosen: [1], totalMinor: 1950 });
    // With a second line of 8.00 at A (9.00 at B) the goods at A are 26.00 and carry nothing: 26.00 against 28.50.
    const two = [...lines, line('rags', { A: 800, B: 900 })];
    expect(chooseSuppliers({ lines: two, terms: all })).toMatchObject({ chosen: [0, 0], totalMinor: 2600 });
    // At exactly the minimum there is no surcharge: 25.00.
    const exact = [line('can', { A: 1800, B: 1950 }), line('rags', { A: 700, B: 900 })];
    expect(chooseSuppliers({ lines: exact, terms: all })).toMatchObject({ chosen: [0, 0], totalMinor: 2500 });
  });

  it('moves a line to where it is dearer when that makes the delivery free', () => {
    // A: 45.00 + 9.00 delivery, free from 50.00. The glue is 5.00 at B, 5.50 at A: 45 + 9 + 5 = 59.00 against 50.50.
    const lines = [line('finish', { A: 4500 }), line('glue', { A: 550, B: 500 })];
    const all = [terms('A', { deliveryMinor: 900, freeFromMinor: 5000 }), terms('B')];
    expect(chooseSuppliers({ lines, terms: all })).toMatchObject({ chosen: [0, 0], totalMinor: 5050 });
  });

  it('sends the fewest orders among choices that cost the same', () => {
    // 10.00 at A and at B, 5.00 at B only: all at B is as cheap, in one order.
    const lines = [line('screws', { A: 1000, B: 1000 }), line('glue', { B: 500 })];
    const choice = chooseSuppliers({ lines, terms: [] });
    expect(namesOf(lines, choice.chosen)).toEqual(['B', 'B']);
    expect(choice).toMatchObject({ totalMinor: 1500, boundMinor: 1500, proven: true, lineByLineMinor: 1500 });
  });

  it('leaves out lines that nobody has, and costs nothing when there is nothing to order', () => {
    expect(chooseSuppliers({ lines: [], terms: [] })).toMatchObject({ totalMinor: 0, proven: true });
    const lines = [line('sold nowhere', {}), line('free', { A: 0 })];
    expect(chooseSuppliers({ lines, terms: [terms('A', { deliveryMinor: 300 })] })).toMatchObject({
      chosen: [-1, 0],
      totalMinor: 300,
      proven: true,
    });
  });

  it('says how far off it may be when the search is cut short, and never too little', () => {
    let cut = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const question = supplierQuestion(seed);
      const { costs, choice } = solvedByProgram(question, packsOf(question));
      const short = chooseSuppliers({
        lines: question.lines.map(({ id }, at) => ({
          id,
          offers: (costs[at] ?? []).flatMap((costMinor, supplier) =>
            costMinor === null ? [] : [{ supplierId: String(supplier), costMinor }],
          ),
        })),
        terms: question.terms,
        mostChoices: 1,
      });
      expect(short.boundMinor).toBeLessThanOrEqual(choice.totalMinor);
      expect(short.totalMinor).toBeGreaterThanOrEqual(choice.totalMinor);
      if (short.proven) expect(short.boundMinor).toBe(short.totalMinor);
      cut += Number(!short.proven);
    }
    expect(cut).toBeGreaterThan(10);
  });

  it('refuses costs that are no whole minor units, and two offers of one supplier', () => {
    expect(() => chooseSuppliers({ lines: [line('x', { A: 1.5 })], terms: [] })).toThrow(RangeError);
    expect(() => chooseSuppliers({ lines: [line('x', { A: -1 })], terms: [] })).toThrow(RangeError);
    const twice = { id: 'x', offers: [1, 2].map((costMinor) => ({ supplierId: 'A', costMinor })) };
    expect(() => chooseSuppliers({ lines: [twice], terms: [] })).toThrow(RangeError);
  });
});

describe('the choice of suppliers on random buy lists', () => {
  it('costs as much as the best of all choices tried one after the other', () => {
    for (let seed = 1; seed <= 150; seed++) {
      const question = supplierQuestion(seed, 6);
      const { costs, choice } = solvedByProgram(question, packsOf(question));
      const lines = question.lines.map(({ id }, at) => ({
        id,
        offers: (costs[at] ?? []).flatMap((costMinor, supplier) =>
          costMinor === null ? [] : [{ supplierId: String(supplier), costMinor }],
        ),
      }));
      expect([seed, choice.totalMinor, choice.proven]).toEqual([
        seed,
        everyChoice(lines, question.terms),
        true,
      ]);
    }
  });

  let highs: Awaited<ReturnType<typeof loadSolver>>;
  beforeAll(async () => {
    highs = await loadSolver();
  });

  it('equals HiGHS, packs and suppliers', () => {
    // A few here; `npm run bench -- suppliers` does 500 larger ones.
    for (let seed = 1; seed <= 15; seed++) {
      const question = supplierQuestion(seed, 4);
      const own = solvedByProgram(question, packsOf(question));
      const byHighs = suppliersByHighs(highs, question);
      expect([seed, own.costs]).toEqual([seed, byHighs.costs]);
      expect([seed, own.choice.totalMinor]).toEqual([seed, byHighs.totalMinor]);
    }
  });
});
