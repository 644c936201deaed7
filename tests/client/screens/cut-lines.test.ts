import { describe, expect, it } from 'vitest';
import { cutLines, stripLetter } from '../../../client/screens/cutting/cut-lines.ts';
import { cutOrder } from '../../../server/planning/cutting/cut-order.ts';
import type { CutNode } from '../../../server/planning/plan-output.ts';

const formats = { length: (mm: number | null) => `${mm} mm` };
const part = (partId: string, lengthMm: number, widthMm: number): CutNode => ({
  type: 'part',
  partId,
  turned: false,
  lengthMm,
  widthMm,
});

describe('the list of cuts', () => {
  // 1020 x 520 with 10 trimmed leaves 1000 x 500, kerf 4: a strip of 200 and an offcut of 296; in the strip
  // 300 | 4 | 300 | 4 | 380 | 4 | 8 of waste makes 1000.
  const cut: CutNode = {
    type: 'split',
    along: 'width',
    lengthMm: 1000,
    widthMm: 500,
    children: [
      {
        type: 'split',
        along: 'length',
        lengthMm: 1000,
        widthMm: 200,
        children: [
          part('s', 300, 200),
          part('s', 300, 200),
          part('t', 380, 200),
          { type: 'offcut', lengthMm: 8, widthMm: 200 },
        ],
      },
      { type: 'offcut', lengthMm: 1000, widthMm: 296 },
    ],
  };
  const lines = cutLines(cutOrder({ lengthMm: 1020, widthMm: 520, cut }, 4), formats, (id) =>
    id === 's' ? 'Shelf' : 'Top',
  );

  it('says trim, rips and crosscuts with their setting, equal ones in a row once', () => {
    expect(lines.map(({ numbers, words }) => [numbers, words])).toEqual([
      ['1–4', 'Trim 10 mm off all four edges'],
      ['5', 'Rip at 200 mm, full length'],
      ['6–7', 'Crosscut strip A at 300 mm, 2 times'],
      ['8', 'Crosscut strip A at 380 mm'],
    ]);
  });

  it('says what comes free, and calls a sliver waste', () => {
    expect(lines.map(({ frees }) => frees)).toEqual([
      '',
      'strip A; leaves offcut 1000 mm × 296 mm',
      '2 × Shelf',
      'Top; leaves waste',
    ]);
  });

  it('letters strips beyond Z', () => {
    expect([1, 26, 27, 52, 53].map(stripLetter)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA']);
  });
});
