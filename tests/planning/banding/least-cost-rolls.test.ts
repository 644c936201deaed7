import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseRolls } from '../../../server/planning/banding/choose-rolls.ts';
import type { StripGroup } from '../../../server/planning/banding/fill-rolls.ts';
import { leastCostRolls } from '../../../server/planning/banding/least-cost-rolls.ts';
import { planBanding } from '../../../server/planning/banding/plan-banding.ts';
import type { RollStock } from '../../../server/planning/banding/roll-stock.ts';
import { planParts } from '../../../server/planning/geometry/plan-parts.ts';
import { band, partRow, roll, sheet, smallProject } from '../geometry/small-project.ts';

const offer = (metres: number, priceMinor: number | null) => ({
  packId: `${metres}`,
  label: `${metres} m`,
  lengthMm: metres * 1000,
  priceMinor,
});

function stock(offers: RollStock['offers'], onHandMm: readonly number[] = []): RollStock {
  return {
    offers,
    onHand: onHandMm.map((lengthMm, index) => ({ onHandId: `${index}`, lengthMm, count: 1 })),
    priced: offers.every(({ priceMinor }) => priceMinor !== null),
    problems: [],
  };
}

function groups(lengths: readonly number[]): StripGroup[] {
  const counts = new Map<number, number>();
  for (const length of lengths) counts.set(length, (counts.get(length) ?? 0) + 1);
  return [...counts]
    .map(([lengthMm, count]) => ({ lengthMm, count }))
    .sort((one, other) => other.lengthMm - one.lengthMm);
}

/** The slow twin: every strip into every roll that is open, on hand, or could be bought. */
function leastByTrying(strips: readonly number[], { offers, onHand, priced }: RollStock): number {
  const price = ({ lengthMm, priceMinor }: RollStock['offers'][number]): number =>
    priced ? (priceMinor ?? 0) : lengthMm;
  let best = Number.POSITIVE_INFINITY;
  const place = (next: number, rooms: number[], spent: number): void => {
    if (spent >= best) return;
    const strip = strips[next];
    if (strip === undefined) {
      best = spent;
      return;
    }
    for (const [roll, room] of rooms.entries()) {
      if (strip > room) continue;
      rooms[roll] = room - strip;
      place(next + 1, rooms, spent);
      rooms[roll] = room;
    }
    for (const one of offers)
      if (strip <= one.lengthMm) place(next + 1, [...rooms, one.lengthMm - strip], spent + price(one));
  };
  place(
    0,
    onHand.map(({ lengthMm }) => lengthMm),
    0,
  );
  return best;
}

describe('leastCostRolls', () => {
  it('finds the two rolls where longest first needs three', () => {
    // 4 + 3 + 3 twice fills two rolls of 10 m; longest first makes 4 + 4, 3 + 3 + 3 and 3.
    const strips = groups([4000, 4000, 3000, 3000, 3000, 3000]);
    const ten = stock([offer(10, 700)]);
    expect(chooseRolls(strips, ten.offers).costMinor).toBe(2100);
    const least = leastCostRolls(strips, ten, 2100);
    expect([least?.cost, least?.boundCost]).toEqual([1400, 1400]);
    const cuts = [
      { lengthMm: 4000, count: 1 },
      { lengthMm: 3000, count: 2 },
    ];
    expect(least?.cuts).toEqual([{ pattern: { rolls: 2, rollMm: 10_000, cuts }, from: { offer: 0 } }]);
  });

  it('has nothing to add to a choice that meets the bound, and says so', () => {
    // 18 m need two rolls of 10 m.
    const least = leastCostRolls(groups([6000, 6000, 3000, 3000]), stock([offer(10, 700)]), 1400);
    expect(least).toEqual({ cuts: null, cost: 1400, boundCost: 1400 });
  });

  it('leaves large jobs and strips no offer holds to the quick choice', () => {
    const ten = stock([offer(10, 700)]);
    const many = Array.from({ length: 61 }, (_, index) => ({ lengthMm: 1000 - index, count: 1 }));
    expect(leastCostRolls(many, ten, 7000)).toBe(null);
    expect(leastCostRolls([{ lengthMm: 1000, count: 1001 }], ten, 90_000)).toBe(null);
    expect(leastCostRolls(groups([10_001]), ten, 0)).toBe(null);
    expect(leastCostRolls([], ten, 0)).toBe(null);
  });

  it('costs as little as trying everything, uses leftovers, cuts every strip once, and bounds no more', () => {
    const lengths = fc.array(fc.integer({ min: 500, max: 5000 }), { minLength: 1, maxLength: 7 });
    const prices = fc.constantFrom<readonly [number | null, number | null]>(
      [100, 170],
      [100, 240],
      [90, 80],
      [null, null],
    );
    const leftovers = fc.array(fc.integer({ min: 400, max: 4000 }), { maxLength: 2 });
    fc.assert(
      fc.property(lengths, prices, leftovers, (strips, [short, long], onHand) => {
        const all = stock([offer(5, short), offer(9, long)], onHand);
        const least = leastCostRolls(groups(strips), all, Number.POSITIVE_INFINITY);
        const wanted = leastByTrying(strips, all);
        expect(least?.cost).toBe(wanted);
        expect(least?.boundCost).toBeLessThanOrEqual(wanted);
        const cut = (least?.cuts ?? []).flatMap(({ pattern }) => {
          const used = pattern.cuts.reduce((sum, { lengthMm, count }) => sum + lengthMm * count, 0);
          expect(used).toBeLessThanOrEqual(pattern.rollMm);
          return pattern.cuts.flatMap(({ lengthMm, count }) =>
            Array<number>(count * pattern.rolls).fill(lengthMm),
          );
        });
        expect(cut.sort((a, b) => a - b)).toEqual(strips.slice().sort((a, b) => a - b));
        const shelf = (least?.cuts ?? []).flatMap(({ from, pattern }) =>
          'onHand' in from ? Array<number>(pattern.rolls).fill(from.onHand) : [],
        );
        expect(new Set(shelf).size).toBe(shelf.length);
      }),
      { numRuns: 300, seed: 2 },
    );
  });
});

describe('the banding plan', () => {
  it('buys the fewer rolls, and says that no choice costs less', () => {
    // Strips of 950 + 50 = 1000 mm, and of 750 mm. Rolls of 2.5 m: 1000 + 750 + 750 twice; longest first would take three.
    const products = [sheet('ply', 18), band('veneer', 0.6, 40, { packs: [roll('2.5 m', 2.5, 500)] })];
    const front = { edgeFront: 'veneer' } as const;
    const input = smallProject({
      products,
      settings: { spareStrips: 0, overhangMm: 25 },
      parts: [
        partRow('1', { ...front, length: '950 mm', quantity: '2' }),
        partRow('2', { ...front, length: '700 mm', quantity: '4' }),
      ],
    });
    const { parts } = planParts(input, new Map());
    const [banding] = planBanding(input, parts).banding;
    expect(banding?.rollsToBuy.value).toBe(2);
    expect(banding?.rollsToBuy.working.notes?.[0]).toBe(
      'No choice of rolls costs less: this one meets its lower bound.',
    );
    expect(
      banding?.rolls.map(({ strips, leftMm }) => [strips.map(({ lengthMm }) => lengthMm), leftMm]),
    ).toEqual([
      [[1000, 750], 0],
      [[1000, 750], 0],
    ]);
  });
});
