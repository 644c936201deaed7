import { describe, expect, it } from 'vitest';
import { fewestPacks } from '../../../server/planning/packs/fewest-packs.ts';
import type { PackChoice } from '../../../server/planning/packs/pack-choice.ts';
import type { Pack } from '../../../server/planning/product.ts';
import { seededRandom } from '../../bench/seeded-random.ts';
import { aPack } from '../finish/sample-project.ts';
import { everyMix, FEWEST } from './slow-twins.ts';

const choose = (need: number, packs: readonly Pack[]): PackChoice =>
  fewestPacks({ need, onHand: 0, packs, currency: 'USD' });

const counts = ({ packs }: PackChoice): unknown => packs.map(({ pack, count }) => [count, pack.id]);

describe('the fewest packs', () => {
  const gallon = aPack('gallon', 3.78, 4000);

  it('are two where the cheapest are five', () => {
    // 4.4 L: five quarts at 9.50 are cheaper, but a gallon and a quart are two; so are two gallons, at 80.00
    const choice = choose(4.4, [gallon, aPack('quart', 0.946, 950)]);
    expect(counts(choice)).toEqual([
      [1, 'gallon'],
      [1, 'quart'],
    ]);
    expect(choice.costMinor).toBe(4950);
  });

  it('are the cheaper of two plans with as many', () => {
    expect(counts(choose(0.5, [gallon, aPack('quart', 0.946, 1100)]))).toEqual([[1, 'quart']]);
    expect(counts(choose(0.5, [gallon, aPack('quart', 0.946, 4100)]))).toEqual([[1, 'gallon']]);
  });

  it('leave the least over when prices are unknown', () => {
    expect(counts(choose(1.5, [aPack('1', 1, null), aPack('2', 2, null), aPack('5', 5, null)]))).toEqual([
      [1, '2'],
    ]);
  });

  it('agree with the slow twin on number, cost and litres in 1,000 random cases', () => {
    const random = seededRandom(7);
    const whole = (least: number, most: number): number => least + Math.floor(random() * (most - least + 1));
    const sizesMl = [236, 473, 500, 750, 946, 1000, 2500, 3785, 5000];
    for (let round = 0; round < 1000; round++) {
      const slow = Array.from({ length: whole(1, 4) }, () => ({
        sizeMl: sizesMl[whole(0, sizesMl.length - 1)] ?? 1000,
        price: whole(0, 40) * 100,
      }));
      const needMl = whole(1, 20 * Math.min(...slow.map(({ sizeMl }) => sizeMl)));
      const choice = choose(
        needMl / 1000,
        slow.map(({ sizeMl, price }, index) => aPack(String(index), sizeMl / 1000, price)),
      );
      expect({
        round,
        packs: choice.packs.reduce((sum, { count }) => sum + count, 0),
        price: choice.costMinor,
        sizeMl: Math.round(choice.bought * 1000),
      }).toEqual({ round, ...everyMix(needMl, slow, FEWEST) });
    }
  });
});
