import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planBuying } from '../../../server/planning/buying/plan-buying.ts';
import type { Figure } from '../../../server/planning/figure.ts';
import type { ProblemCode } from '../../../server/planning/problem.ts';
import type { ProductKind } from '../../../server/planning/product.ts';
import { planned } from '../finish/bookcase.ts';
import { aPack, aPart, aProduct, aProject, aRecipe, aStep } from '../finish/sample-project.ts';

/** Whatever a user can type, the finish, the needs and the buy list are planned without an exception. */

const number = fc.oneof(
  fc.constantFrom(0, -1, 1, 0.5, 2, 20, Number.NaN, Number.POSITIVE_INFINITY, -0, 1e-300, 1e300, 1e9),
  fc.double({ min: 0, max: 1000, noNaN: true }),
);
const maybe = fc.option(number);
const productId = fc.constantFrom('', 'p0', 'p1', 'p2', 'p3', 'p4', 'nowhere');

const product = fc.record({
  kind: fc.constantFrom<ProductKind>(
    'finish',
    'thinner',
    'abrasive',
    'glue',
    'hardware',
    'consumable',
    'sheet',
  ),
  coverage: fc.tuple(maybe, maybe, maybe),
  other: number,
  hardenerId: productId,
  mix: number,
  retired: fc.boolean(),
  packs: fc.array(fc.tuple(number, maybe, fc.constantFrom('USD', 'EUR')), { maxLength: 4 }),
});

const step = fc.record({
  kind: fc.constantFrom('sand', 'dust', 'condition', 'stain', 'seal', 'topcoat', 'scuff', 'cure'),
  productId,
  blendId: fc.constantFrom('', 'b', 'nowhere'),
  coats: number,
  method: fc.constantFrom('brush', 'roller', 'wipe', 'spray-hvlp', 'spray-airless', 'spray-air'),
  transferEfficiency: maybe,
  thinning: number,
  thinnerId: productId,
  sessionLossL: maybe,
});

const project = fc.record({
  products: fc.array(product, { minLength: 1, maxLength: 5 }),
  steps: fc.array(step, { maxLength: 6 }),
  parts: fc.array(
    fc.tuple(
      fc.option(fc.integer({ min: 0, max: 10_000 })),
      fc.option(fc.double({ min: 0, max: 100, noNaN: true })),
      fc.constantFrom('', 'r', 'nowhere'),
      fc.constantFrom('', 'r'),
    ),
    { maxLength: 4 },
  ),
  components: fc.array(fc.tuple(productId, number), { maxLength: 3 }),
  rules: fc.array(
    fc.tuple(
      productId,
      fc.constantFrom('finish-area', 'coat-area', 'banding-metre', 'part', 'project'),
      maybe,
    ),
    { maxLength: 3 },
  ),
  extras: fc.array(fc.tuple(productId, number, maybe), { maxLength: 3 }),
  onHand: fc.array(fc.tuple(productId, number, number), { maxLength: 3 }),
  settings: fc.record({
    finishLoss: number,
    taxPercent: maybe,
    coverageChoice: fc.constantFrom('low', 'typical', 'high'),
  }),
});

function figuresIn(value: unknown): readonly Figure[] {
  if (value === null || typeof value !== 'object') return [];
  if ('working' in value) return [value as Figure];
  return Object.values(value).flatMap(figuresIn);
}

describe('any project at all', () => {
  it('is planned without an exception, in finite figures, each problem once at its place', () => {
    const seen = new Set<ProblemCode>();
    fc.assert(
      fc.property(project, (given) => {
        const parts = given.parts.map(([pieces, area, showRecipeId, backRecipeId], index) =>
          aPart({
            id: String(index),
            pieces,
            showM2: area,
            backM2: area,
            edgeM2: 0.1,
            showRecipeId,
            backRecipeId,
          }),
        );
        const input = aProject({
          parts: parts.map(({ row }) => row),
          products: given.products.map(({ kind, coverage, other, hardenerId, mix, retired, packs }, index) =>
            aProduct(
              `p${index}`,
              kind,
              { coverage, potLife: other, areaPerPiece: other, usePerArea: other, firstCoatFactor: mix },
              {
                retired,
                choices: { hardenerId, mixBase: mix, mixHardener: other },
                packs: packs.map(([amount, price, currency], at) =>
                  aPack(`k${at}`, amount, price, { currency }),
                ),
              },
            ),
          ),
          recipes: [
            aRecipe(
              'r',
              given.steps.map((row, index) => aStep(String(index), row.kind, row)),
            ),
          ],
          blends: [
            {
              id: 'b',
              name: 'blend',
              components: given.components.map(([id, amount], index) => ({
                id: String(index),
                productId: id,
                parts: amount,
              })),
            },
          ],
          rules: given.rules.map(([id, per, rate], index) => ({
            id: String(index),
            productId: id,
            per,
            rate,
          })),
          extras: given.extras.map(([id, quantity, unitPriceMinor], index) => ({
            id: String(index),
            productId: id,
            name: '',
            category: 'other' as const,
            quantity,
            unitPriceMinor,
            supplierId: '',
          })),
          onHand: given.onHand.map(([id, amount, count], index) => ({
            id: String(index),
            productId: id,
            amount,
            count,
            lengthMm: null,
            widthMm: null,
          })),
          settings: given.settings,
        });
        const plan = planned(input, parts);
        const buying = planBuying(input, { needs: plan.needs, banding: [], materials: [] });
        for (const { value, unit } of figuresIn([plan.recipes, plan.needs, buying.buy])) {
          expect(value === null || Number.isFinite(value)).toBe(true);
          expect(value ?? 0).toBeGreaterThanOrEqual(0);
          if (unit === 'minor' && value !== null) expect(Number.isInteger(value)).toBe(true);
        }
        const problems = [...plan.problems, ...buying.problems];
        for (const { code, message, wayOut } of problems) {
          seen.add(code);
          expect(message.endsWith('.') && wayOut.endsWith('.')).toBe(true);
        }
        const places = problems.map(({ code, at }) => JSON.stringify([code, at]));
        expect(new Set(places).size).toBe(places.length);
        const ids = buying.buy.lines.map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
      }),
      { numRuns: 500, seed: 20260131 },
    );
    // The cases really reach the corners they are meant for.
    for (const code of [
      'coverage-missing',
      'hardener-missing',
      'pack-size-invalid',
      'usage-rate-invalid',
    ] as const)
      expect(seen).toContain(code);
  });
});
