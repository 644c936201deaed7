import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastCostPacks } from '../../../server/planning/packs/least-cost-packs.ts';
import type { PackChoice } from '../../../server/planning/packs/pack-choice.ts';
import type { Pack } from '../../../server/planning/product.ts';
import { seededRandom } from '../../bench/seeded-random.ts';
import { aPack } from '../finish/sample-project.ts';
import { CHEAPEST, everyAmount, everyMix } from './slow-twins.ts';

const choose = (need: number, packs: readonly Pack[], onHand = 0): PackChoice =>
  leastCostPacks({ need, onHand, packs, currency: 'USD' });

const counts = ({ packs }: PackChoice): unknown => packs.map(({ pack, count }) => [count, pack.id]);

const GALLON = aPack('gallon', 3.78, 4000);
const QUART = aPack('quart', 0.946, 950);

describe('the cheapest packs', () => {
  it('are five quarts where taking the largest first would cost more', () => {
    // 4.4 L: gallon and quart 40.00 + 9.50 = 49.50; five quarts (4.73 L) 5 x 9.50 = 47.50; two gallons 80.00
    expect(choose(4.4, [GALLON, QUART])).toEqual({
      basis: 'priced',
      packs: [{ pack: QUART, count: 5 }],
      toBuy: 4.4,
      bought: expect.closeTo(4.73, 12),
      leftover: expect.closeTo(0.33, 12),
      costMinor: 4750,
      proven: true,
    });
  });

  it('are one of each where taking the cheapest litre first would cost more', () => {
    // per litre the gallon is cheaper, yet two of it are 80.00 against 40.00 + 10.50 = 50.50 and 5 x 10.50 = 52.50
    expect(counts(choose(4.4, [GALLON, aPack('quart', 0.946, 1050)]))).toEqual([
      [1, 'gallon'],
      [1, 'quart'],
    ]);
  });

  it('are a bigger pack where that is cheaper than the exact fit', () => {
    // 1.892 L is exactly two quarts at 45.00; the gallon is 40.00
    expect(counts(choose(1.892, [GALLON, aPack('quart', 0.946, 2250)]))).toEqual([[1, 'gallon']]);
  });

  it('leave the least over at equal cost, and then are the fewest', () => {
    // 3 L: one of 4 L or two of 1.5 L at 20.00 each way; the two leave nothing over
    expect(counts(choose(3, [aPack('four', 4, 2000), aPack('half', 1.5, 1000)]))).toEqual([[2, 'half']]);
    // 3 L: one of 3 L or two of 1.5 L at 20.00 and nothing over either way
    expect(counts(choose(3, [aPack('half', 1.5, 1000), aPack('three', 3, 2000)]))).toEqual([[1, 'three']]);
  });

  it('take off what is on hand, and count it in what is left over', () => {
    const choice = choose(4.4, [GALLON, QUART], 0.7);
    // 3.7 L to buy: gallon 40.00, four quarts 38.00 (3.784 L)
    expect(counts(choice)).toEqual([[4, 'quart']]);
    expect(choice.toBuy).toBeCloseTo(3.7, 12);
    expect(choice.leftover).toBeCloseTo(0.084, 12); // 3.784 + 0.7 - 4.4
  });

  it('are none when there is enough on hand, whatever is known of packs', () => {
    expect(choose(0.7, [], 1)).toEqual({
      basis: 'enough',
      packs: [],
      toBuy: 0,
      bought: 0,
      leftover: expect.closeTo(0.3, 12),
      costMinor: 0,
      proven: true,
    });
    expect(choose(0, [GALLON]).basis).toBe('enough');
  });

  it('come from the cheaper of two offers of one size', () => {
    const dear = aPack('dear', 1, 1500, { supplierId: 'a' });
    const cheap = aPack('cheap', 1, 1200, { supplierId: 'b' });
    expect(counts(choose(2, [dear, cheap]))).toEqual([[2, 'cheap']]);
  });

  it('may cost nothing', () => {
    const choice = choose(2.5, [aPack('gift', 1, 0), GALLON]);
    expect(counts(choice)).toEqual([[3, 'gift']]);
    expect(choice.costMinor).toBe(0);
  });
});

describe('the tolerance of a tenth of a millilitre', () => {
  it.each([
    [3.7799, 1], // just under the pack
    [3.78, 1],
    [3.7800000001, 1], // floating-point dust
    [3.7801, 1], // at the tolerance
    [3.78011, 2], // just over it
  ])('makes %s L of a 3.78 L pack %s packs', (need, packs) => {
    expect(choose(need, [GALLON]).packs[0]?.count).toBe(packs);
  });

  it('takes dust over what is on hand for enough', () => {
    expect(choose(1.0001, [GALLON], 1).basis).toBe('enough');
    expect(choose(1.00011, [GALLON], 1).basis).toBe('priced');
  });

  it('leaves nothing over, rather than less than nothing', () => {
    expect(choose(3.7800000001, [GALLON]).leftover).toBe(0);
    expect(choose(3 * 0.946, [QUART]).leftover).toBe(0);
  });

  it('counts whole pieces as they are', () => {
    const box = aPack('box of 10', 10, 500);
    expect(choose(20, [box]).packs[0]?.count).toBe(2);
    expect(choose(20.001, [box]).packs[0]?.count).toBe(3);
  });
});

describe('packs without a usable price', () => {
  it('are chosen by least left over, and the cost is unknown', () => {
    // 4.4 L of 2.5, 1 and 0.5 L: 2.5 + 1 + 0.5 + 0.5 = 4.5 is the least that covers it
    const packs = [aPack('2.5', 2.5, null), aPack('1', 1, null), aPack('0.5', 0.5, null)];
    const choice = choose(4.4, packs);
    expect(choice.basis).toBe('unpriced');
    expect(choice.bought).toBe(4.5);
    expect(choice.costMinor).toBeNull();
  });

  it('are not split into many small ones to save a spoonful', () => {
    // five quarts leave 0.330 L, a gallon and a quart 0.331 L: one millilitre is not worth three more cans
    const packs = [aPack('gallon', 3.785, null), aPack('quart', 0.946, null)];
    expect(counts(choose(4.4, packs))).toEqual([
      [1, 'gallon'],
      [1, 'quart'],
    ]);
  });

  it('are left alone while a priced one covers the need', () => {
    expect(counts(choose(2, [aPack('free of price', 2, null), aPack('priced', 1, 900)]))).toEqual([
      [2, 'priced'],
    ]);
  });

  it('in another currency are left alone while one in the currency of the project is there', () => {
    const euro = aPack('euro', 2, 100, { currency: 'EUR' });
    expect(counts(choose(2, [euro, aPack('dollar', 1, 900)]))).toEqual([[2, 'dollar']]);
    expect(counts(choose(2, [euro, aPack('no price', 1, null)]))).toEqual([[2, 'no price']]);
  });

  it('in another currency only say which packs, not what they cost', () => {
    const choice = choose(3, [aPack('euro', 2, 100, { currency: 'EUR' })]);
    expect(choice.basis).toBe('other-currency');
    expect(counts(choice)).toEqual([[2, 'euro']]);
    expect(choice.costMinor).toBeNull();
  });

  it('count as unpriced when the price is no price', () => {
    for (const price of [-1, 9.5, Number.NaN, 1e10])
      expect(choose(1, [aPack('odd', 1, price)]).basis).toBe('unpriced');
  });

  it('are nothing to choose from when there are none', () => {
    expect(choose(3, [])).toEqual({
      basis: 'none',
      packs: [],
      toBuy: 3,
      bought: 0,
      leftover: null,
      costMinor: null,
      proven: false,
    });
  });
});

describe('the fast choice and its slow twins', () => {
  const SIZES_ML = [100, 236, 237, 250, 473, 500, 750, 946, 1000, 1892, 2500, 3785, 5000];

  it('agree on cost, litres and number of packs in 2,000 small random cases', () => {
    const random = seededRandom(20260131);
    const whole = (least: number, most: number): number => least + Math.floor(random() * (most - least + 1));
    for (let round = 0; round < 2000; round++) {
      const slow = Array.from({ length: whole(1, 4) }, () => {
        const sizeMl = SIZES_ML[whole(0, SIZES_ML.length - 1)] ?? 1000;
        // from dear small packs to prices in proportion to size, so that ties are common too
        const price = random() < 0.3 ? sizeMl : whole(1, 30) * 100;
        return { sizeMl, price };
      });
      const smallest = Math.min(...slow.map(({ sizeMl }) => sizeMl));
      const needMl = whole(1, Math.min(9000, 25 * smallest));
      const choice = choose(
        needMl / 1000,
        slow.map(({ sizeMl, price }, index) => aPack(String(index), sizeMl / 1000, price)),
      );
      const twin = everyMix(needMl, slow, CHEAPEST);
      expect({
        round,
        price: choice.costMinor,
        sizeMl: Math.round(choice.bought * 1000),
        packs: choice.packs.reduce((sum, { count }) => sum + count, 0),
        proven: choice.proven,
      }).toEqual({ round, ...twin, proven: true });
    }
  });

  it('agree in large cases with the sizes and prices of real cans', () => {
    const slow = [
      { sizeMl: 237, price: 799 },
      { sizeMl: 473, price: 1199 },
      { sizeMl: 946, price: 1899 },
      { sizeMl: 3785, price: 5999 },
      { sizeMl: 18927, price: 24900 },
    ];
    const packs = slow.map(({ sizeMl, price }) => aPack(String(sizeMl), sizeMl / 1000, price));
    for (const needMl of [11_800, 37_300, 53_111, 94_635, 200_001, 399_999]) {
      const choice = choose(needMl / 1000, packs);
      const twin = everyAmount(needMl, slow, CHEAPEST);
      expect([choice.costMinor, Math.round(choice.bought * 1000), choice.proven]).toEqual([
        twin.price,
        twin.sizeMl,
        true,
      ]);
    }
  });

  it('are joined by a hand check on sizes given to the microlitre', () => {
    // by hand, for a table in millilitres cannot hold these sizes
    const packs = [
      aPack('gallon', 3.785412, 5999),
      aPack('quart', 0.946353, 1899),
      aPack('pint', 0.473176, 1199),
    ];
    // 12.3 L: 3 gallons (11.356) and a quart (12.303) 179.97 + 18.99 = 198.96; 3 gallons and 2 pints (12.303) 203.95
    expect(counts(choose(12.3, packs))).toEqual([
      [3, 'gallon'],
      [1, 'quart'],
    ]);
    // 3 gallons and a quart are 12.302589 L; a microlitre and a tenth of a millilitre more takes the next size
    expect(counts(choose(12.302689, packs))).toEqual([
      [3, 'gallon'],
      [1, 'quart'],
    ]);
    // 3 gallons, a quart and a pint: 179.97 + 18.99 + 11.99; a fourth gallon is 239.96, three pints 215.94
    expect(choose(12.302691, packs).costMinor).toBe(21_095);
  });
});

describe('a choice of packs', () => {
  const sizes = fc.uniqueArray(fc.integer({ min: 50, max: 20_000 }), { minLength: 1, maxLength: 5 });
  const packsOf = (ml: readonly number[], prices: readonly number[]): readonly Pack[] =>
    ml.map((size, index) => aPack(String(index), size / 1000, prices[index] ?? 1000));

  it('always covers the need, and its cost never falls when the need rises', () => {
    fc.assert(
      fc.property(
        sizes,
        fc.array(fc.integer({ min: 0, max: 20_000 }), { minLength: 5, maxLength: 5 }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (ml, prices, need, more) => {
          const packs = packsOf(ml, prices);
          const small = choose(need, packs);
          const large = choose(need + more, packs);
          expect(small.bought + 1e-4).toBeGreaterThanOrEqual(need - 1e-6);
          expect(small.leftover ?? -1).toBeGreaterThanOrEqual(0);
          if (small.proven && large.proven)
            expect(large.costMinor ?? 0).toBeGreaterThanOrEqual(small.costMinor ?? 0);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('never costs more for having more on hand, and never more than the packs of one size', () => {
    fc.assert(
      fc.property(
        sizes,
        fc.array(fc.integer({ min: 1, max: 20_000 }), { minLength: 5, maxLength: 5 }),
        fc.double({ min: 0.01, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (ml, prices, need, onHand) => {
          const packs = packsOf(ml, prices);
          const bare = choose(need, packs);
          if (bare.proven)
            expect(choose(need, packs, onHand).costMinor ?? 0).toBeLessThanOrEqual(bare.costMinor ?? 0);
          for (const pack of packs)
            expect(bare.costMinor ?? 0).toBeLessThanOrEqual(choose(need, [pack]).costMinor ?? 0);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('still covers hundreds of cans priced in proportion to size, near the least cost, and admits it is not proven', () => {
    const sizesMl = [236.588, 473.176, 946.353, 3785.412, 18927.059];
    const packs = sizesMl.map((ml) => aPack(String(ml), ml / 1000, Math.round(ml)));
    const choice = choose(1500.3, packs);
    expect(choice.proven).toBe(false);
    expect(choice.bought).toBeGreaterThanOrEqual(1500.3 - 1e-4);
    // The best price per litre is 946 for 0.946353 L, so no mix costs less than 1500.3 x 946 / 0.946353 = 1,499,740
    expect(choice.costMinor).toBeGreaterThanOrEqual(1_499_740);
    expect(choice.costMinor).toBeLessThan(1_499_740 + 1000);
  });

  it('refuses a need, a stock or a pack that is no amount', () => {
    expect(() => choose(-1, [GALLON])).toThrow('need');
    expect(() => choose(Number.NaN, [GALLON])).toThrow('need');
    expect(() => choose(1, [GALLON], -1)).toThrow('onHand');
    expect(() => choose(1, [aPack('nothing', 0, 100)])).toThrow('amount');
  });
});
