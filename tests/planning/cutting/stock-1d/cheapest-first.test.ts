import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cheapestFirst } from '../../../../server/planning/cutting/stock-1d/cheapest-first.ts';

describe('the queue that gives the cheapest first', () => {
  it('gives what sorting gives, whatever is put in between', () => {
    const entry = fc.record({ cost: fc.integer({ min: 0, max: 9 }), tie: fc.integer({ min: 0, max: 3 }) });
    fc.assert(
      fc.property(fc.array(fc.option(entry), { maxLength: 80 }), (moves) => {
        const queue = cheapestFirst<{ cost: number; tie: number }>();
        const twin: { cost: number; tie: number }[] = [];
        for (const move of moves) {
          if (move !== null) {
            queue.put(move, move.cost, move.tie);
            twin.push(move);
            continue;
          }
          twin.sort((one, other) => one.cost - other.cost || one.tie - other.tie);
          const expected = twin.shift();
          const taken = queue.take();
          expect([taken?.cost, taken?.item.tie]).toEqual([expected?.cost, expected?.tie]);
        }
      }),
    );
  });

  it('is empty at first', () => {
    expect(cheapestFirst().take()).toBe(null);
  });
});
