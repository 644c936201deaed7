import { describe, expect, it } from 'vitest';
import { barScale } from '../../../client/drawing/bar-scale.ts';
import { drawnRolls } from '../../../client/drawing/roll-segments.ts';

const strip = (lengthMm: number, count: number, partId: string | null = '1') => ({
  partId,
  stripId: partId === null ? null : 'front',
  lengthMm,
  count,
});
const roll = (id: string, lengthMm: number, strips: ReturnType<typeof strip>[]) => ({
  id,
  packId: 'p',
  onHandId: null,
  label: 'roll',
  lengthMm,
  strips,
  leftMm: lengthMm - strips.reduce((sum, one) => sum + one.lengthMm * one.count, 0),
});

describe('rolls as bars', () => {
  it('lay the strips end to end, in percent of the longest roll', () => {
    // 10 m roll: 2 x 2 m, then 1 m: 0-40 %, 40-50 %, 50 % left. The 5 m roll is half as long.
    const [long, short] = drawnRolls([
      roll('a', 10_000, [strip(2000, 2), strip(1000, 1, null)]),
      roll('b', 5000, []),
    ]);
    expect(long?.segments.map(({ start, width, cuts }) => [start, width, cuts])).toEqual([
      [0, 40, [20]],
      [40, 10, []],
    ]);
    expect(long?.left).toEqual({ start: 50, width: 50 });
    expect(short).toMatchObject({ width: 50, segments: [], left: { start: 0, width: 50 } });
  });

  it('keep spares apart from strips of parts', () => {
    const [only] = drawnRolls([roll('a', 4000, [strip(1000, 1), strip(1000, 2, null)])]);
    expect(only?.segments.map(({ partId }) => partId)).toEqual(['1', null]);
  });

  it('are none for no rolls', () => {
    expect(drawnRolls([])).toEqual([]);
  });
});

describe('a bar scale', () => {
  it('maps the largest value to the whole width and stops there', () => {
    const scale = barScale(8);
    expect([scale(0), scale(2), scale(8), scale(9)]).toEqual([0, 25, 100, 100]);
  });

  it('is nothing while nothing is known', () => {
    expect(barScale(0)(5)).toBe(0);
  });
});
