import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BarsPlan,
  type BarsToCut,
  cutBars,
} from '../../../server/planning/cutting/stock-1d/cut-bars.ts';

/** Every broken rule: pieces and kerfs within the stock, demand met exactly, limits kept, cost added up. */
function brokenRules(toCut: BarsToCut, plan: BarsPlan): string[] {
  const broken: string[] = [];
  const made = toCut.pieces.map(() => 0);
  const used = toCut.stocks.map(() => 0);
  let cost = 0;
  for (const { stock, cuts, times } of plan.patterns) {
    let length = -toCut.kerfMm;
    for (const { piece, count } of cuts) {
      length += count * (Number(toCut.pieces[piece]?.lengthMm) + toCut.kerfMm);
      made[piece] = Number(made[piece]) + count * times;
    }
    if (!(length <= Number(toCut.stocks[stock]?.lengthMm) + 0.002))
      broken.push(`${length} on stock ${stock}`);
    if (!(Number.isInteger(times) && times > 0)) broken.push(`times ${times}`);
    used[stock] = Number(used[stock]) + times;
    cost += times * Number(toCut.stocks[stock]?.cost);
  }
  for (const [piece, { count }] of toCut.pieces.entries())
    if (made[piece] !== count) broken.push(`piece ${piece}: ${made[piece]} of ${count}`);
  for (const [stock, { limit }] of toCut.stocks.entries())
    if (Number(used[stock]) > limit) broken.push(`stock ${stock}: ${used[stock]} of ${limit}`);
  if (cost !== plan.cost) broken.push(`cost ${plan.cost}, patterns cost ${cost}`);
  if (plan.boundCost > plan.cost) broken.push(`bound ${plan.boundCost} above cost ${plan.cost}`);
  if (plan.proven !== (plan.boundCost === plan.cost)) broken.push('proven without meeting the bound');
  return broken;
}

/** Least cost by trying every bar for every piece: the slow twin. */
function leastCost({ pieces, stocks, kerfMm }: BarsToCut): number {
  const lengths = pieces.flatMap(({ lengthMm, count }) => Array<number>(count).fill(lengthMm));
  const left = stocks.map(({ limit }) => limit);
  let best = Number.POSITIVE_INFINITY;
  const place = (at: number, rooms: readonly number[], cost: number): void => {
    if (cost >= best) return;
    const length = lengths[at];
    if (length === undefined) {
      best = cost;
      return;
    }
    for (const [bar, room] of rooms.entries())
      if (room >= length + kerfMm - 1e-6)
        place(
          at + 1,
          rooms.map((each, index) => (index === bar ? each - length - kerfMm : each)),
          cost,
        );
    for (const [stock, { lengthMm, cost: price }] of stocks.entries()) {
      if (Number(left[stock]) < 1 || length > lengthMm) continue;
      left[stock] = Number(left[stock]) - 1;
      place(at + 1, [...rooms, lengthMm - length], cost + price);
      left[stock] = Number(left[stock]) + 1;
    }
  };
  place(0, [], 0);
  return best;
}

const bought = { lengthMm: 2400, cost: 1, limit: Number.POSITIVE_INFINITY };

function checked(toCut: BarsToCut): BarsPlan {
  const plan = cutBars(toCut);
  expect(brokenRules(toCut, plan)).toEqual([]);
  return plan;
}

describe('cutBars', () => {
  it('fills a bar to the end, kerfs between the pieces only', () => {
    // 4 x 597.75 + 3 x 3 = 2400; a tenth more no longer fits.
    const plan = checked({ pieces: [{ lengthMm: 597.75, count: 4 }], stocks: [bought], kerfMm: 3 });
    expect([plan.cost, plan.boundStocks, plan.proven]).toEqual([1, 1, true]);
    const longer = checked({ pieces: [{ lengthMm: 597.85, count: 4 }], stocks: [bought], kerfMm: 3 });
    expect([longer.cost, longer.boundStocks, longer.proven]).toEqual([2, 2, true]);
  });

  it('proves by the relaxation what an area bound cannot', () => {
    // 9 x 1000 mm: length alone says 9000 / 2400 = 4 bars, but only two fit each bar: 5.
    const plan = checked({ pieces: [{ lengthMm: 1000, count: 9 }], stocks: [bought], kerfMm: 0 });
    expect([plan.cost, plan.boundCost, plan.proven]).toEqual([5, 5, true]);
  });

  it('takes leftovers first and mixes stock lengths by price', () => {
    const plan = checked({
      pieces: [{ lengthMm: 1190, count: 3 }],
      stocks: [
        { lengthMm: 1200, cost: 0, limit: 1 },
        { lengthMm: 2400, cost: 600, limit: Number.POSITIVE_INFINITY },
        { lengthMm: 3600, cost: 1000, limit: Number.POSITIVE_INFINITY },
      ],
      kerfMm: 3,
    });
    // The leftover takes one, a 2400 mm board (600) takes the other two with one kerf: 2 x 1190 + 3 = 2383.
    expect([plan.cost, plan.proven]).toEqual([600, true]);
  });

  it('cuts nothing from nothing', () => {
    expect(cutBars({ pieces: [], stocks: [bought], kerfMm: 3 })).toEqual({
      patterns: [],
      cost: 0,
      boundCost: 0,
      boundStocks: 0,
      proven: true,
    });
  });

  it('hands equal lengths out to the pieces asked for', () => {
    const plan = checked({
      pieces: [
        { lengthMm: 800, count: 2 },
        { lengthMm: 800, count: 3 },
        { lengthMm: 800, count: 4 },
      ],
      stocks: [bought],
      kerfMm: 0,
    });
    expect(plan.cost).toBe(3);
  });

  it('lays two thousand pieces of many lengths close to the bound', () => {
    const pieces = Array.from({ length: 700 }, (_, index) => ({
      lengthMm: 150 + ((index * 7919) % 1850),
      count: 3,
    }));
    const plan = checked({ pieces, stocks: [bought], kerfMm: 3 });
    expect(plan.cost).toBeLessThan(1.02 * plan.boundCost);
  });

  it('refuses what cannot be cut', () => {
    const refuse = (change: Partial<BarsToCut>) =>
      expect(() =>
        cutBars({ pieces: [{ lengthMm: 10, count: 1 }], stocks: [bought], kerfMm: 3, ...change }),
      ).toThrow(RangeError);
    refuse({ kerfMm: -1 });
    refuse({ kerfMm: Number.NaN });
    refuse({ pieces: [{ lengthMm: 2401, count: 1 }] });
    refuse({ pieces: [{ lengthMm: 0, count: 1 }] });
    refuse({ pieces: [{ lengthMm: 10, count: 0.5 }] });
    refuse({ stocks: [] });
    refuse({ stocks: [{ ...bought, limit: 5 }] });
    refuse({ stocks: [{ ...bought, cost: -1 }] });
  });

  it('costs as little as trying everything, and says so rightly, for up to seven pieces', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({ lengthMm: fc.integer({ min: 1, max: 24 }), count: fc.integer({ min: 1, max: 2 }) }),
          {
            minLength: 1,
            maxLength: 4,
          },
        ),
        fc.integer({ min: 0, max: 2 }),
        fc.integer({ min: 1, max: 9 }),
        fc.array(fc.integer({ min: 5, max: 20 }), { maxLength: 2 }),
        (pieces, kerfMm, secondCost, leftovers) => {
          fc.pre(pieces.reduce((sum, { count }) => sum + count, 0) <= 7);
          const toCut: BarsToCut = {
            pieces,
            stocks: [
              { lengthMm: 24, cost: 6, limit: Number.POSITIVE_INFINITY },
              { lengthMm: 15, cost: secondCost, limit: Number.POSITIVE_INFINITY },
              ...leftovers.map((lengthMm) => ({ lengthMm, cost: 0, limit: 1 })),
            ],
            kerfMm,
          };
          const plan = checked(toCut);
          const least = leastCost(toCut);
          expect(plan.boundCost).toBeLessThanOrEqual(least);
          expect(plan.cost).toBe(least);
        },
      ),
      { numRuns: 300, seed: 1 },
    );
  });
});
