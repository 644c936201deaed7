import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planParts } from '../../../server/planning/geometry/plan-parts.ts';
import { EDGE_NAMES, type EdgeName } from '../../../server/planning/project-input.ts';
import { band, partRow, sheet, smallProject } from './small-project.ts';

/**
 * A slow twin of the strip runs: a walk round the finished outline in small steps, which knows nothing of edges'
 * formulas. Each step asks which band lies at that point of the outline; a step inside the end of a deducted band
 * that is laid later belongs to that band.
 */

const BANDS: Readonly<Record<string, number>> = { thin: 0, thick: 3, solid: 12 };
const PRODUCTS = [
  sheet('ply', 18),
  band('thin', 0.6),
  band('thick', 3),
  band('solid', 12, 40, { choices: { deducted: 'yes' } }),
];

interface Case {
  readonly length: number;
  readonly width: number;
  /** Front left, front right, back left, back right. */
  readonly radii: readonly [number, number, number, number];
  readonly treatment: Readonly<Record<EdgeName, string>>;
  readonly order: readonly EdgeName[];
}

/** Length of outline that each product covers, found by walking; mm to a step. */
function walked({ length, width, radii, treatment, order }: Case, stepMm: number): Map<string, number> {
  const covered = new Map<string, number>();
  const add = (edge: EdgeName, mm: number) => {
    if (treatment[edge] in BANDS) covered.set(treatment[edge], (covered.get(treatment[edge]) ?? 0) + mm);
  };
  const [frontLeft, frontRight, backLeft, backRight] = radii;
  // Straight sides: [edge, side length, start radius, start neighbour, end radius, end neighbour].
  const sides: readonly (readonly [EdgeName, number, number, EdgeName, number, EdgeName])[] = [
    ['front', length, frontLeft, 'left', frontRight, 'right'],
    ['back', length, backLeft, 'left', backRight, 'right'],
    ['left', width, frontLeft, 'front', backLeft, 'back'],
    ['right', width, frontRight, 'front', backRight, 'back'],
  ];
  const laterThickness = (edge: EdgeName, neighbour: EdgeName): number =>
    order.indexOf(neighbour) > order.indexOf(edge) ? (BANDS[treatment[neighbour]] ?? 0) : 0;
  for (const [edge, side, startRadius, startNeighbour, endRadius, endNeighbour] of sides)
    for (let at = stepMm / 2; at < side; at += stepMm) {
      if (at < startRadius || at > side - endRadius) continue; // on the arc, walked below
      if (startRadius === 0 && at < laterThickness(edge, startNeighbour)) continue;
      if (endRadius === 0 && at > side - laterThickness(edge, endNeighbour)) continue;
      add(edge, stepMm);
    }
  const arcs: readonly (readonly [number, EdgeName, EdgeName])[] = [
    [frontLeft, 'left', 'front'],
    [frontRight, 'front', 'right'],
    [backLeft, 'back', 'left'],
    [backRight, 'right', 'back'],
  ];
  for (const [radius, one, other] of arcs) {
    if (radius === 0) continue;
    const steps = Math.ceil((radius * Math.PI) / 2 / stepMm);
    for (let step = 0; step < steps; step++) {
      // A chord between two neighbouring points of the arc.
      const chord = 2 * radius * Math.sin(Math.PI / 4 / steps);
      const nearer = step < steps / 2 ? one : other;
      const farther = nearer === one ? other : one;
      add(treatment[nearer] in BANDS ? nearer : farther, chord);
    }
  }
  return covered;
}

const radius = fc.constantFrom(0, 0, 20, 57.3, 90);
const treatments = fc.constantFrom('hidden', 'bare', 'thin', 'thick', 'solid');
const cases: fc.Arbitrary<Case> = fc.record({
  length: fc.integer({ min: 200, max: 700 }),
  width: fc.integer({ min: 200, max: 500 }),
  radii: fc.tuple(radius, radius, radius, radius),
  treatment: fc.record({ front: treatments, back: treatments, left: treatments, right: treatments }),
  order: fc.shuffledSubarray([...EDGE_NAMES], { minLength: 4 }),
});

function planned({ length, width, radii, treatment, order }: Case) {
  const { parts } = planParts(
    smallProject({
      products: PRODUCTS,
      settings: { bandingOrder: order },
      parts: [
        partRow('1', {
          length: `${length} mm`,
          width: `${width} mm`,
          edgeFront: treatment.front,
          edgeBack: treatment.back,
          edgeLeft: treatment.left,
          edgeRight: treatment.right,
          radiusFrontLeft: `${radii[0]}`,
          radiusFrontRight: `${radii[1]}`,
          radiusBackLeft: `${radii[2]}`,
          radiusBackRight: `${radii[3]}`,
        }),
      ],
    }),
    new Map(),
  );
  return parts[0];
}

describe('strips against a walk round the outline', () => {
  it('cover what the walk finds, product by product', () => {
    const stepMm = 0.1;
    fc.assert(
      fc.property(cases, (one) => {
        const part = planned(one);
        const strips = new Map<string, number>();
        for (const { bandingId, runMm } of part?.strips ?? [])
          strips.set(bandingId, (strips.get(bandingId) ?? 0) + (runMm.value ?? Number.NaN));
        const walk = walked(one, stepMm);
        expect([...strips.keys()].sort()).toEqual([...walk.keys()].sort());
        // Up to eight ends of sides and four arcs are each off by at most a step.
        for (const [product, mm] of walk)
          expect(Math.abs((strips.get(product) ?? 0) - mm)).toBeLessThan(12 * stepMm);
      }),
      { numRuns: 400 },
    );
  });

  it('have each banded edge in exactly one strip, joined only at rounded corners', () => {
    fc.assert(
      fc.property(cases, (one) => {
        const part = planned(one);
        const inStrips = (part?.strips ?? []).flatMap(({ edges }) => edges);
        const banded = EDGE_NAMES.filter((name) => one.treatment[name] in BANDS);
        expect([...inStrips].sort()).toEqual([...banded].sort());
        expect(part?.strips.every(({ id, edges }) => id === edges.join('+'))).toBe(true);
        const joints = inStrips.length - (part?.strips.filter(({ closed }) => !closed).length ?? 0);
        expect(joints).toBeLessThanOrEqual(one.radii.filter((size) => size > 0).length);
      }),
    );
  });

  it('of the outline add up to the circumference, whatever is banded', () => {
    fc.assert(
      fc.property(cases, (one) => {
        const part = planned(one);
        const outline = (part?.edges ?? []).reduce(
          (sum, { outlineMm }) => sum + (outlineMm.value ?? Number.NaN),
          0,
        );
        const rounding = one.radii.reduce((sum, size) => sum + size * (Math.PI / 2 - 2), 0);
        expect(outline).toBeCloseTo(2 * (one.length + one.width) + rounding, 6);
      }),
    );
  });
});
