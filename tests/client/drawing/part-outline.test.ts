import { describe, expect, it } from 'vitest';
import { dogEar } from '../../../client/drawing/dog-ear.ts';
import { edgePath, outlinePoints, partOutline } from '../../../client/drawing/part-outline.ts';

const ROOM = { width: 224, height: 220, least: 16 };
const SQUARE = [0, 0, 0, 0] as const;

describe('the outline of a part', () => {
  it('fills the room with both sides to one scale', () => {
    // 224 / 896 = 0.25 units per mm; 300 x 0.25 = 75.
    const outline = partOutline({ lengthMm: 896, widthMm: 300, cornersMm: SQUARE }, ROOM);
    expect(outline).toMatchObject({ width: 224, height: 75, scale: 0.25, stretched: null });
  });

  it('is bounded by the height for a part wider than long', () => {
    // 220 / 880 = 0.25; 100 x 0.25 = 25.
    expect(partOutline({ lengthMm: 100, widthMm: 880, cornersMm: SQUARE }, ROOM)).toMatchObject({
      width: 25,
      height: 220,
    });
  });

  it('keeps a very narrow part visible and says which side is not to scale', () => {
    // 2240 mm at 0.1 per mm is 224; 20 mm would be 2 units, drawn as 16.
    expect(partOutline({ lengthMm: 2240, widthMm: 20, cornersMm: SQUARE }, ROOM)).toMatchObject({
      height: 16,
      stretched: 'width',
    });
  });

  it('draws radii to the same scale, and never more than half a side', () => {
    const outline = partOutline(
      { lengthMm: 448, widthMm: 448, cornersMm: [40, 0, 0, 224] },
      { ...ROOM, height: 300 },
    );
    // 224 / 448 = 0.5: 40 mm is 20, 224 mm is 112, half of 224.
    expect(outline.corners).toEqual([20, 0, 0, 112]);
    expect(partOutline({ lengthMm: 448, widthMm: 448, cornersMm: [999, 0, 0, 0] }, ROOM).corners[0]).toBe(
      110,
    );
  });

  it('is a circle for a round part: every point as far from the middle', () => {
    const outline = partOutline({ lengthMm: 450, widthMm: 450, cornersMm: [225, 225, 225, 225] }, ROOM);
    const middle = outline.width / 2;
    for (const [x, y] of outlinePoints(outline))
      expect(Math.hypot(x - middle, y - middle)).toBeCloseTo(middle, 6);
  });
});

describe('the path of an edge', () => {
  const outline = partOutline(
    { lengthMm: 200, widthMm: 100, cornersMm: SQUARE },
    { width: 200, height: 200, least: 1 },
  );

  it('runs along the bottom for the front and along the top for the back', () => {
    expect(edgePath(outline, 'front')).toBe('M0 100L200 100');
    expect(edgePath(outline, 'back')).toBe('M0 0L200 0');
    expect(edgePath(outline, 'left')).toBe('M0 100L0 0');
    expect(edgePath(outline, 'right')).toBe('M200 100L200 0');
  });

  it('moves outward by the offset', () => {
    expect(edgePath(outline, 'front', 6)).toBe('M0 106L200 106');
    expect(edgePath(outline, 'right', 6)).toBe('M206 100L206 0');
  });

  it('takes half of a rounded corner; its neighbour begins where it ends', () => {
    const rounded = partOutline(
      { lengthMm: 200, widthMm: 100, cornersMm: [20, 0, 0, 0] },
      { width: 200, height: 200, least: 1 },
    );
    // The middle of the front left arc: centre (20, 80), 20 out at 45 degrees down and left: 20 - 14.142, 80 + 14.142.
    expect(edgePath(rounded, 'front')).toBe('M5.86 94.14A20 20 0 0 0 20 100L200 100');
    expect(edgePath(rounded, 'left')).toBe('M5.86 94.14A20 20 0 0 1 0 80L0 0');
  });
});

describe('the folded corner', () => {
  const square = partOutline(
    { lengthMm: 200, widthMm: 100, cornersMm: SQUARE },
    { width: 200, height: 200, least: 1 },
  );

  it('is the back right corner, turned over onto the face', () => {
    const { folded, flap } = dogEar(square);
    expect(folded.some(([x, y]) => x === 200 && y === 0)).toBe(true);
    // The corner's mirror image lies on the same diagonal, twice the depth of 17 further in.
    const reach = 17 * 2 * Math.SQRT1_2;
    expect(flap.some(([x, y]) => Math.abs(x - (200 - reach)) < 1e-6 && Math.abs(y - reach) < 1e-6)).toBe(
      true,
    );
    for (const [x, y] of flap) {
      expect(x).toBeLessThanOrEqual(200);
      expect(y).toBeGreaterThanOrEqual(-1e-9);
    }
  });

  it('is there on a round part as well, inside the circle', () => {
    const round = partOutline(
      { lengthMm: 100, widthMm: 100, cornersMm: [50, 50, 50, 50] },
      { width: 100, height: 100, least: 1 },
    );
    const { folded, flap } = dogEar(round);
    expect(folded.length).toBeGreaterThan(3);
    for (const [x, y] of flap) expect(Math.hypot(x - 50, y - 50)).toBeLessThanOrEqual(50 + 1e-6);
  });
});
