import { describe, expect, it } from 'vitest';
import { sheetPieces } from '../../../client/drawing/sheet-pieces.ts';
import { partNumbers } from '../../../client/screens/cutting/part-numbers.ts';
import type { CutNode } from '../../../server/planning/plan-output.ts';

const part = (partId: string, lengthMm: number, widthMm: number, turned = false): CutNode => ({
  type: 'part',
  partId,
  turned,
  lengthMm,
  widthMm,
});

describe('the pieces of a sheet', () => {
  // A 1000 x 500 sheet trimmed 10 all round leaves 980 x 480, cut across at 484: 484 + 4 kerf + 492.
  const cut: CutNode = {
    type: 'split',
    along: 'length',
    lengthMm: 980,
    widthMm: 480,
    children: [
      part('a', 484, 480),
      {
        type: 'split',
        along: 'width',
        lengthMm: 492,
        widthMm: 480,
        children: [part('b', 492, 200, true), { type: 'offcut', lengthMm: 492, widthMm: 276 }],
      },
    ],
  };
  const pieces = sheetPieces({ lengthMm: 1000, widthMm: 500, cut }, 4);

  it('lie where the cuts put them, trim and kerf between', () => {
    expect(pieces.map(({ type, x, y }) => [type, x, y])).toEqual([
      // Trim: 10 of 1000 is 1 %, 10 of 500 is 2 %.
      ['part', 1, 2],
      // 10 + 484 + 4 = 498 of 1000.
      ['part', 49.8, 2],
      // 10 + 200 + 4 = 214 of 500.
      ['offcut', 49.8, 42.8],
    ]);
  });

  it('have their size in percent of the sheet', () => {
    expect(pieces.map(({ width, height }) => [width, height])).toEqual([
      [48.4, 96],
      [49.2, 40],
      [49.2, 55.2],
    ]);
  });

  it('stay inside the sheet', () => {
    for (const { x, y, width, height } of pieces) {
      expect(x + width).toBeLessThanOrEqual(100);
      expect(y + height).toBeLessThanOrEqual(100);
    }
  });

  it('are numbered by part; a turned one is named by the size it will be used at', () => {
    expect(partNumbers(pieces)).toEqual([
      { partId: 'a', number: 1, lengthMm: 484, widthMm: 480, count: 1 },
      { partId: 'b', number: 2, lengthMm: 200, widthMm: 492, count: 1 },
    ]);
  });

  it('count equal parts once', () => {
    const two: CutNode = {
      type: 'split',
      along: 'length',
      lengthMm: 100,
      widthMm: 50,
      children: [part('a', 48, 50), part('a', 48, 50)],
    };
    expect(partNumbers(sheetPieces({ lengthMm: 100, widthMm: 50, cut: two }, 4))).toMatchObject([
      { partId: 'a', count: 2 },
    ]);
  });
});
