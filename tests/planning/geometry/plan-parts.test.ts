import { describe, expect, it } from 'vitest';
import { planSizes } from '../../../server/planning/dimensions/plan-sizes.ts';
import type { Figure } from '../../../server/planning/figure.ts';
import { planParts } from '../../../server/planning/geometry/plan-parts.ts';
import type { PartPlan } from '../../../server/planning/plan-output.ts';
import type { EdgeName, ProjectInput, Recipe } from '../../../server/planning/project-input.ts';
import { allCorners, allEdges, band, figureOf, partRow, sheet, smallProject } from './small-project.ts';

function plan(input: ProjectInput) {
  const planned = planParts(input, planSizes(input).values);
  return {
    ...planned,
    codes: planned.problems.map(({ code, at }) => `${at.table}/${at.id}/${at.field} ${code}`),
  };
}

/** The plan of a project of one part, which must be there. */
function one(input: ProjectInput): PartPlan & { readonly codes: readonly string[] } {
  const { parts, codes } = plan(input);
  const [part] = parts;
  if (part === undefined) throw new Error('no part');
  return { ...part, codes };
}

function run(part: PartPlan, edge: EdgeName): number | null | undefined {
  return part.edges.find(({ id }) => id === edge)?.runMm.value;
}

const SHORT_FIRST: readonly EdgeName[] = ['left', 'right', 'back', 'front'];
const LONG_FIRST: readonly EdgeName[] = ['back', 'front', 'left', 'right'];

describe('a part with four veneered edges', () => {
  const part = one(smallProject({ parts: [partRow('7', { ...allEdges('veneer'), quantity: '3' })] }));

  it('is cut at its finished size, since thin veneer is not deducted', () => {
    expect(part.cutLengthMm.value).toBe(600);
    expect(part.cutWidthMm.value).toBe(400);
    expect(part.codes).toEqual([]);
  });

  it('has four strips, each an overhang longer at both ends', () => {
    // 400 + 2 x 25 and 600 + 2 x 25.
    expect(part.strips.map(({ id, stripMm }) => [id, stripMm.value])).toEqual([
      ['left', 450],
      ['front', 650],
      ['right', 450],
      ['back', 650],
    ]);
  });

  it('has faces, seen edges and banded metres to the last digit', () => {
    expect(part.showFaceM2.value).toBe(0.24); // 0.6 x 0.4
    expect(part.seenEdgeM2.value).toBeCloseTo(0.036, 12); // 2.0 m x 0.018 m
    expect(part.totalBandedM.value).toBe(6); // 3 x 2.0 m
    expect(part.totalFinishM2.value).toBe(0); // no recipe
  });

  it('shows how each figure came about, with paths to go on', () => {
    expect(part.strips[1]?.stripMm.working).toEqual({
      rule: 'strip = run + 2 x overhang',
      inputs: [
        { name: 'run', value: 600, unit: 'mm', from: 'parts/7/strips/front/runMm' },
        { name: 'overhang', value: 25, unit: 'mm', source: 'project setting' },
      ],
    });
    expect(part.cutLengthMm.working.inputs).toEqual([
      { name: 'finished length', value: 600, unit: 'mm', from: 'parts/7/lengthMm' },
      expect.objectContaining({ name: 'deducted at the left edge', value: 0 }),
      expect.objectContaining({ name: 'deducted at the right edge', value: 0 }),
    ]);
    expect(part.totalBandedM.working.inputs[0]?.from).toBe('parts/7/quantity');
  });
});

describe('thick bands', () => {
  it('come off the cut size on their own axis only', () => {
    const part = one(smallProject({ parts: [partRow('1', { edgeFront: 'thick', edgeLeft: 'thick' })] }));
    expect(part.cutLengthMm.value).toBe(598); // left band, 2 mm
    expect(part.cutWidthMm.value).toBe(398); // front band
  });

  it('let the edge that is banded later cover the ends of the others', () => {
    const rows = { parts: [partRow('1', allEdges('thick'))] };
    const shortFirst = one(smallProject({ ...rows, settings: { bandingOrder: SHORT_FIRST } }));
    expect([run(shortFirst, 'left'), run(shortFirst, 'right')]).toEqual([396, 396]); // 400 - 2 - 2
    expect([run(shortFirst, 'front'), run(shortFirst, 'back')]).toEqual([600, 600]);
    const longFirst = one(smallProject({ ...rows, settings: { bandingOrder: LONG_FIRST } }));
    expect([run(longFirst, 'front'), run(longFirst, 'back')]).toEqual([596, 596]); // 600 - 2 - 2
    expect([run(longFirst, 'left'), run(longFirst, 'right')]).toEqual([400, 400]);
  });

  it('shorten a neighbour only where both are banded and the thick one is later', () => {
    // Left is banded first; only the front beside it is banded, with 2 mm: 400 - 2.
    const part = one(smallProject({ parts: [partRow('1', { edgeLeft: 'veneer', edgeFront: 'thick' })] }));
    expect(run(part, 'left')).toBe(398);
    expect(run(part, 'front')).toBe(600);
    const thinLater = one(
      smallProject({ parts: [partRow('1', { edgeLeft: 'thick', edgeFront: 'veneer' })] }),
    );
    expect(run(thinLater, 'left')).toBe(400);
  });

  it('are deducted from 1 mm up unless the product says otherwise', () => {
    const cut = (thicknessMm: number, deducted?: 'auto' | 'yes' | 'no') =>
      one(
        smallProject({
          parts: [partRow('1', allEdges('b'))],
          products: [sheet('ply', 18), band('b', thicknessMm, 40, { choices: deducted ? { deducted } : {} })],
        }),
      ).cutLengthMm.value;
    expect(cut(0.99)).toBe(600);
    expect(cut(1)).toBe(598);
    expect(cut(1, 'no')).toBe(600);
    expect(cut(0.6, 'yes')).toBeCloseTo(598.8, 9);
    expect(cut(1.3, 'auto')).toBeCloseTo(597.4, 9);
  });

  it('that leave nothing to cut are a problem of the size', () => {
    const input = smallProject({ parts: [partRow('1', { ...allEdges('thick'), length: '4 mm' })] });
    const part = one(input);
    expect(part.cutLengthMm.value).toBeNull();
    expect(part.cutWidthMm.value).toBe(396);
    expect(part.codes).toEqual(['parts/1/length cut-size-not-positive']);
  });
});

describe('rounded corners', () => {
  it('take the radius off both edges and join them into one strip with the arc', () => {
    const part = one(
      smallProject({
        parts: [partRow('1', { edgeFront: 'veneer', edgeLeft: 'veneer', radiusFrontLeft: '50' })],
      }),
    );
    expect(part.strips).toHaveLength(1);
    expect(part.strips[0]?.id).toBe('left+front');
    // 400 - 50 + 600 - 50 + pi x 50 / 2 = 900 + 78.5398...
    expect(part.strips[0]?.runMm.value).toBeCloseTo(978.539816339745, 9);
    expect(part.strips[0]?.stripMm.value).toBeCloseTo(1028.539816339745, 9);
    expect(part.cornersMm).toEqual([50, 0, 0, 0]);
    expect(part.showFaceM2.value).toBeCloseTo(0.24 - (1 - Math.PI / 4) * 0.0025, 12);
  });

  it('chain three edges, and four that leave one corner square', () => {
    const three = one(
      smallProject({
        parts: [
          partRow('1', {
            ...allEdges('veneer'),
            edgeBack: 'hidden',
            radiusFrontLeft: '50',
            radiusFrontRight: '30',
          }),
        ],
      }),
    );
    expect(three.strips.map(({ id }) => id)).toEqual(['left+front+right']);
    // 2 x 400 + 600 - 2 x 50 - 2 x 30 + pi/2 x 80 = 1240 + 125.6637...
    expect(three.strips[0]?.runMm.value).toBeCloseTo(1365.663706143592, 9);
    const four = one(
      smallProject({
        parts: [partRow('1', { ...allEdges('veneer'), ...allCorners('50'), radiusBackLeft: '' })],
      }),
    );
    expect(four.strips.map(({ id, closed }) => [id, closed])).toEqual([['left+front+right+back', false]]);
    const startsElsewhere = one(
      smallProject({
        parts: [partRow('1', { ...allEdges('veneer'), ...allCorners('50'), radiusFrontLeft: '' })],
      }),
    );
    expect(startsElsewhere.strips.map(({ id }) => id)).toEqual(['front+right+back+left']);
  });

  it('all round make one closed strip with one overlap', () => {
    const part = one(smallProject({ parts: [partRow('1', { ...allEdges('veneer'), ...allCorners('50') })] }));
    expect(part.strips).toHaveLength(1);
    expect(part.strips[0]).toMatchObject({ id: 'front+right+back+left', closed: true });
    // 2000 - 8 x 50 + 2 pi x 50 = 1600 + 314.1593; overlap 2 x 25.
    expect(part.strips[0]?.runMm.value).toBeCloseTo(1914.159265358979, 9);
    expect(part.strips[0]?.stripMm.value).toBeCloseTo(1964.159265358979, 9);
    expect(part.strips[0]?.stripMm.working.rule).toContain('overlap');
  });

  it('go with the band beside an unbanded edge, and are shared by two different bands, with a warning', () => {
    const beside = one(
      smallProject({
        parts: [partRow('1', { edgeFront: 'veneer', radiusFrontLeft: '100', edgeLeft: 'bare' })],
      }),
    );
    expect(run(beside, 'front')).toBeCloseTo(500 + 50 * Math.PI, 9); // 600 - 100 + pi x 100 / 2
    expect(beside.edges.map(({ id, outlineMm }) => [id, outlineMm.value])).toEqual([
      ['front', 500 + 50 * Math.PI],
      ['back', 600],
      ['left', 300],
      ['right', 400],
    ]);
    expect(beside.codes).toEqual(['parts/1/radiusFrontLeft corner-band-mismatch']);
    const shared = one(
      smallProject({
        parts: [partRow('1', { edgeFront: 'veneer', edgeLeft: 'thick', radiusFrontLeft: '100' })],
      }),
    );
    expect(run(shared, 'front')).toBeCloseTo(500 + 25 * Math.PI, 9); // half of pi x 100 / 2
    expect(run(shared, 'left')).toBeCloseTo(300 + 25 * Math.PI, 9);
    expect(shared.strips.map(({ id }) => id)).toEqual(['left', 'front']);
    expect(shared.codes).toEqual(['parts/1/radiusFrontLeft corner-band-mismatch']);
    expect(
      one(smallProject({ parts: [partRow('1', { edgeLeft: 'bare', radiusFrontLeft: '9' })] })).codes,
    ).toEqual([]);
  });

  it('may touch on a side and not overrun it', () => {
    const touching = one(smallProject({ parts: [partRow('1', { ...allCorners('200') })] }));
    expect(touching.codes).toEqual([]);
    // A 600 x 400 slot: 200 x 400 rectangle and two half discs of radius 200: 0.08 + pi x 0.04.
    expect(touching.showFaceM2.value).toBeCloseTo(0.08 + Math.PI * 0.04, 12);
    const over = one(
      smallProject({ parts: [partRow('1', { ...allEdges('veneer'), radiusFrontLeft: '401' })] }),
    );
    expect(over.codes).toEqual(['parts/1/radiusFrontLeft corner-too-large']);
    expect(over.showFaceM2.value).toBeNull();
    expect(over.strips.map(({ runMm }) => runMm.value)).toEqual([null, null, null, null]);
    expect(over.cutLengthMm.value).toBe(600);
  });

  it('of radius zero are square', () => {
    const part = one(smallProject({ parts: [partRow('1', { ...allEdges('veneer'), ...allCorners('0') })] }));
    expect(part.strips).toHaveLength(4);
    expect(part.codes).toEqual([]);
  });
});

describe('a round part', () => {
  const row = { shape: 'round', length: '800', width: '800', edgeFront: 'thick' } as const;

  it('has one closed strip of its circumference and one overlap', () => {
    const part = one(smallProject({ parts: [partRow('1', row)] }));
    expect(part.cornersMm).toEqual([400, 400, 400, 400]);
    expect(part.strips).toHaveLength(1);
    expect(part.strips[0]?.runMm.value).toBeCloseTo(800 * Math.PI, 9);
    expect(part.strips[0]?.stripMm.value).toBeCloseTo(800 * Math.PI + 50, 9);
    expect(part.cutLengthMm.value).toBe(796);
    expect(part.cutWidthMm.value).toBe(796);
    expect(part.showFaceM2.value).toBeCloseTo(Math.PI * 0.16, 12); // pi x 0.4 squared
    expect(part.seenEdgeM2.value).toBeCloseTo(Math.PI * 0.8 * 0.018, 12);
    expect(part.codes).toEqual([]);
  });

  it('must be as wide as long', () => {
    const part = one(smallProject({ parts: [partRow('1', { ...row, width: '790' })] }));
    expect(part.codes).toEqual(['parts/1/width round-not-square']);
    expect(part.strips[0]?.runMm.value).toBeNull();
    expect(one(smallProject({ parts: [partRow('1', { ...row, width: '800.005' })] })).codes).toEqual([]);
  });

  it('takes its band from the front cell and warns where another cell says something else', () => {
    const part = one(
      smallProject({ parts: [partRow('1', { ...row, edgeLeft: 'veneer', edgeBack: 'thick' })] }),
    );
    expect(part.codes).toEqual(['parts/1/edgeLeft corner-band-mismatch']);
    expect(part.strips[0]?.bandingId).toBe('thick');
  });

  it('reports what its band lacks once', () => {
    const products = [sheet('ply', 18), band('b', null, null)];
    const part = one(smallProject({ parts: [partRow('1', { ...row, edgeFront: 'b' })], products }));
    expect(part.codes).toEqual([
      'parts/1/edgeFront band-thickness-unknown',
      'parts/1/edgeFront band-width-unknown',
    ]);
    const unknown = one(smallProject({ parts: [partRow('1', { ...row, edgeFront: 'gone' })] }));
    expect(unknown.codes).toEqual(['parts/1/edgeFront product-unknown']);
  });
});

describe('thickness', () => {
  const thickness = (input: ProjectInput) => one(input).thicknessMm;

  it('is what was measured, else the typical actual one, else the nominal one', () => {
    const products = [
      sheet('ply', null, { figures: { thicknessNominal: figureOf(18), thicknessActual: figureOf(17.6) } }),
    ];
    const parts = [partRow('1')];
    expect(thickness(smallProject({ parts, products })).value).toBe(17.6);
    const measurements = [{ id: '1', productId: 'ply', thicknessMm: 17.4 }];
    expect(thickness(smallProject({ parts, products, measurements })).value).toBe(17.4);
    const nominal = [sheet('ply', null, { figures: { thicknessNominal: figureOf(18) } })];
    const figure: Figure = thickness(smallProject({ parts, products: nominal }));
    expect(figure.value).toBe(18);
    expect(figure.working.inputs[0]?.source).toContain('nominal');
  });

  it('overrides the thickness of a band as well', () => {
    const measurements = [{ id: '1', productId: 'veneer', thicknessMm: 1.1 }];
    const part = one(smallProject({ parts: [partRow('1', allEdges('veneer'))], measurements }));
    expect(part.cutLengthMm.value).toBeCloseTo(597.8, 9); // 600 - 2 x 1.1, now thick enough to be deducted
  });

  it('that is not known is a problem of the material cell, and leaves the rest computed', () => {
    const input = smallProject({
      parts: [partRow('1', { edgeFront: 'bare' })],
      products: [sheet('ply', null)],
    });
    const part = one(input);
    expect(part.codes).toEqual(['parts/1/materialId thickness-unknown']);
    expect(part.thicknessMm.value).toBeNull();
    expect(part.seenEdgeM2.value).toBeNull();
    expect(part.showFaceM2.value).toBe(0.24);
  });

  it('that was measured as nothing is a problem of the measurement', () => {
    const measurements = [{ id: '5', productId: 'ply', thicknessMm: 0 }];
    const part = one(smallProject({ parts: [partRow('1')], measurements }));
    expect(part.codes).toEqual([
      'measurements/5/thicknessMm dimension-not-positive',
      'parts/1/materialId thickness-unknown',
    ]);
  });
});

describe('band width', () => {
  const width = (mm: number | null, settings = {}) => {
    const products = [sheet('ply', 18), band('b', 0.6, mm)];
    const { problems } = plan(
      smallProject({ parts: [partRow('1', { edgeFront: 'b' })], products, settings }),
    );
    return problems.map(({ code, severity }) => `${severity} ${code}`);
  };

  it('must cover the thickness and the trim allowance at both faces', () => {
    // 18 + 2 x 1.6 = 21.2, with 0.05 allowed for a sixteenth written as 1.6 mm.
    expect(width(21.2)).toEqual([]);
    expect(width(21.15)).toEqual([]);
    expect(width(21.14)).toEqual(['warning band-too-narrow']);
    expect(width(18)).toEqual(['warning band-too-narrow']);
    expect(width(17.99)).toEqual(['error band-too-narrow']);
    expect(width(18, { trimAllowanceMm: 0 })).toEqual([]);
  });

  it('that is not known is a warning', () => {
    expect(width(null)).toEqual(['warning band-width-unknown']);
  });
});

describe('finished area', () => {
  const coats = (id: string, count: number): Recipe => ({
    id,
    name: id,
    faces: 'flip',
    steps: [
      {
        id: '1',
        kind: 'topcoat',
        productId: '',
        blendId: '',
        coats: count,
        method: 'brush',
        transferEfficiency: null,
        thinning: 0,
        thinnerId: '',
        sessionLossL: null,
        note: '',
      },
    ],
  });

  it('counts the faces with a recipe and, if there is one, the seen edges', () => {
    const row = { quantity: '4', edgeFront: 'veneer', edgeLeft: 'bare' };
    const recipes = [coats('r', 2)];
    const show = one(smallProject({ parts: [partRow('1', { ...row, showRecipeId: 'r' })], recipes }));
    // 4 x (0.24 + (0.6 + 0.4) x 0.018) = 4 x 0.258
    expect(show.totalFinishM2.value).toBeCloseTo(1.032, 12);
    const both = one(
      smallProject({ parts: [partRow('1', { ...row, showRecipeId: 'r', backRecipeId: 'r' })], recipes }),
    );
    expect(both.totalFinishM2.value).toBeCloseTo(1.992, 12); // 4 x 0.498
    const back = one(smallProject({ parts: [partRow('1', { ...row, backRecipeId: 'r' })], recipes }));
    expect(back.totalFinishM2.value).toBeCloseTo(1.032, 12);
  });

  it('notes once per part when the faces get a different number of film-building coats', () => {
    const recipes = [coats('two', 2), coats('three', 3), coats('none', 0)];
    const notes = (showRecipeId: string, backRecipeId: string) =>
      one(smallProject({ parts: [partRow('1', { showRecipeId, backRecipeId })], recipes })).codes;
    expect(notes('two', '')).toEqual(['parts/1/backRecipeId faces-unbalanced']);
    expect(notes('two', 'three')).toEqual(['parts/1/showRecipeId faces-unbalanced']);
    expect(notes('two', 'two')).toEqual([]);
    expect(notes('none', '')).toEqual([]);
    expect(notes('', '')).toEqual([]);
    expect(notes('two', 'gone')).toEqual([]); // an unknown recipe is another problem
  });
});

describe('a bad cell', () => {
  it('is one located problem, and the figures that do not hang on it are worked out', () => {
    const { parts, codes } = plan(
      smallProject({
        parts: [
          partRow('1', { ...allEdges('veneer'), length: '1,220' }),
          partRow('2', { ...allEdges('veneer'), quantity: '2.5' }),
          partRow('3', { ...allEdges('veneer'), radiusBackRight: 'x' }),
          partRow('4', { edgeFront: 'gone', edgeLeft: 'ply', width: '' }),
          partRow('5', { materialId: '' }),
          partRow('6', { materialId: 'gone' }),
          partRow('7', { materialId: 'veneer' }),
          partRow('8', allEdges('veneer')),
        ],
      }),
    );
    expect(codes).toEqual([
      'parts/1/length dimension-ambiguous',
      'parts/2/quantity quantity-not-whole',
      'parts/3/radiusBackRight dimension-unreadable',
      'parts/4/width dimension-missing',
      'parts/4/edgeFront product-unknown',
      'parts/4/edgeLeft product-wrong-kind',
      'parts/5/materialId material-missing',
      'parts/6/materialId material-unknown',
      'parts/7/materialId product-wrong-kind',
    ]);
    const [first, second, third, fourth, , , , eighth] = parts;
    expect(first?.cutLengthMm.value).toBeNull();
    expect(first?.cutWidthMm.value).toBe(400);
    expect(first?.edges.map(({ runMm }) => runMm.value)).toEqual([null, null, 400, 400]);
    expect(second?.totalBandedM.value).toBeNull();
    expect(second?.strips[0]?.stripMm.value).toBe(450);
    expect(third?.showFaceM2.value).toBeNull();
    expect(third?.showFaceM2.working.notes?.length).toBe(1);
    expect(fourth?.cutLengthMm.value).toBeNull(); // the left band is no banding
    expect(fourth?.strips).toEqual([]);
    expect(fourth?.totalBandedM.value).toBeNull();
    expect(eighth?.totalBandedM.value).toBe(2);
    for (const part of parts)
      for (const figure of [part.cutLengthMm, part.cutWidthMm, part.showFaceM2, part.totalBandedM])
        if (figure.value === null) expect(figure.working.notes?.length).toBeGreaterThan(0);
  });

  it('of a band without a thickness leaves the cut size unknown unless it is never deducted', () => {
    const row = partRow('1', allEdges('b'));
    const unknown = one(smallProject({ parts: [row], products: [sheet('ply', 18), band('b', null)] }));
    expect(unknown.cutLengthMm.value).toBeNull();
    expect(unknown.codes).toEqual(['parts/1/edgeFront band-thickness-unknown']);
    // Left and right are laid first and front and back later, so their ends are not known; the last ones' are.
    expect([run(unknown, 'left'), run(unknown, 'front')]).toEqual([null, 600]);
    const never = band('b', null, 40, { choices: { deducted: 'no' } });
    const known = one(smallProject({ parts: [row], products: [sheet('ply', 18), never] }));
    expect(known.cutLengthMm.value).toBe(600);
    expect(known.codes).toEqual([]);
  });

  it('that names a retired product warns once and computes', () => {
    const products = [sheet('ply', 18, { retired: true }), band('veneer', 0.6, 40, { retired: true })];
    const part = one(smallProject({ parts: [partRow('1', allEdges('veneer'))], products }));
    expect(part.codes).toEqual(['parts/1/materialId product-retired', 'parts/1/edgeFront product-retired']);
    expect(part.totalBandedM.value).toBe(2);
  });

  it('can be a setting: overhang, trim allowance and banding order', () => {
    const settings = {
      overhangMm: -1,
      trimAllowanceMm: Number.NaN,
      bandingOrder: ['front', 'front'] as EdgeName[],
    };
    const part = one(smallProject({ parts: [partRow('1', { edgeFront: 'veneer' })], settings }));
    expect(part.codes).toEqual([
      'settings/null/overhangMm setting-invalid',
      'settings/null/trimAllowanceMm setting-invalid',
      'settings/null/bandingOrder setting-invalid',
    ]);
    expect(part.strips[0]?.runMm.value).toBeNull();
    expect(part.cutLengthMm.value).toBe(600);
  });
});

describe('calculations in cells', () => {
  it('work out lengths, radii and quantities, and a loop among the sizes is no fault of the part', () => {
    const { parts, codes } = plan(
      smallProject({
        sizes: [
          { id: '1', name: 'depth', value: '400', note: '' },
          { id: '2', name: 'loop', value: '=loop', note: '' },
        ],
        parts: [
          partRow('1', {
            length: '=depth*2',
            width: '=depth - 0',
            radiusFrontLeft: '=depth/8',
            quantity: '=2*3',
          }),
          partRow('2', { length: '=loop' }),
          partRow('3', { length: '=nowhere' }),
        ],
      }),
    );
    expect(parts[0]).toMatchObject({
      lengthMm: { value: 800 },
      widthMm: { value: 400 },
      quantity: { value: 6 },
    });
    expect(parts[0]?.cornersMm[0]).toBe(50);
    expect(parts[1]?.lengthMm.value).toBeNull();
    expect(codes).toEqual(['parts/3/length expression-unknown-name']);
  });

  it('refer to the first of two sizes of one name', () => {
    const sizes = ['400', '500'].map((value, place) => ({
      id: `${place + 1}`,
      name: 'depth',
      value,
      note: '',
    }));
    const part = one(smallProject({ sizes, parts: [partRow('1', { length: '=depth' })] }));
    expect(part.lengthMm.value).toBe(400);
    expect(part.lengthMm.working.inputs[0]?.from).toBe('sizes/1/valueMm');
  });
});
