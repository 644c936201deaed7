import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planBanding } from '../../../server/planning/banding/plan-banding.ts';
import { planSizes } from '../../../server/planning/dimensions/plan-sizes.ts';
import { planParts } from '../../../server/planning/geometry/plan-parts.ts';
import type { PartInput } from '../../../server/planning/project-input.ts';
import { band, partRow, sheet, smallProject } from '../geometry/small-project.ts';

const cell = fc.oneof(
  fc.constantFrom('', '600', '24"', '=depth', '=depth/2 - 10', '=loop', '=', '1,220', '-3', '0', '99999 m'),
  fc.string({ unit: 'binary', maxLength: 12 }),
);
const radius = fc.oneof({ weight: 4, arbitrary: fc.constantFrom('', '40', '0', '=depth/4') }, cell);
const edge = fc.constantFrom('hidden', 'bare', 'veneer', 'thick', 'bandless', 'ply', 'gone');
const row: fc.Arbitrary<Partial<PartInput>> = fc.record({
  quantity: fc.oneof(fc.constantFrom('1', '4', '100000', '=2*3', ''), cell),
  length: fc.oneof(fc.constantFrom('600', '600'), cell),
  width: fc.oneof(fc.constantFrom('600', '400'), cell),
  shape: fc.constantFrom('rectangle', 'round'),
  materialId: fc.constantFrom('ply', 'thin air', 'veneer', '', 'gone'),
  edgeFront: edge,
  edgeBack: edge,
  edgeLeft: edge,
  edgeRight: edge,
  radiusFrontLeft: radius,
  radiusFrontRight: radius,
  radiusBackLeft: radius,
  radiusBackRight: radius,
  showRecipeId: fc.constantFrom('', 'r'),
  backRecipeId: fc.constantFrom('', 'r'),
});

/** Every number in a plan, wherever it sits. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

describe('any part list', () => {
  it('is planned without throwing, in finite numbers, with every problem in a place and at most one error to a cell', () => {
    fc.assert(
      fc.property(fc.array(row, { maxLength: 4 }), fc.nat({ max: 2 }), (rows, spareStrips) => {
        const input = smallProject({
          parts: rows.map((rest, place) => partRow(String(place + 1), rest)),
          products: [
            sheet('ply', 18),
            sheet('thin air', null),
            band('veneer', 0.6),
            band('thick', 2),
            band('bandless', null, null, { packs: [] }),
          ],
          sizes: [
            { id: '1', name: 'depth', value: '400', note: '' },
            { id: '2', name: 'loop', value: '=loop', note: '' },
          ],
          settings: { spareStrips },
        });
        const sizes = planSizes(input);
        const geometry = planParts(input, sizes.values);
        const rolls = planBanding(input, geometry.parts);
        expect(geometry.parts).toHaveLength(rows.length);
        for (const number of numbersIn([geometry.parts, rolls.banding]))
          expect(Number.isFinite(number)).toBe(true);
        const errors = geometry.problems
          .filter(({ severity }) => severity === 'error')
          .map(({ at }) => `${at.table} ${at.id} ${at.field}`);
        expect(new Set(errors).size).toBe(errors.length);
        for (const { message, wayOut } of [...geometry.problems, ...rolls.problems])
          expect(Math.min(message.length, wayOut.length)).toBeGreaterThan(10);
        // The same input gives a deeply equal plan.
        expect(planParts(input, sizes.values)).toEqual(geometry);
      }),
      { numRuns: 300 },
    );
  });
});
