import { describe, expect, it } from 'vitest';
import { keptOffcuts } from '../../../../server/planning/cutting/begun/kept-offcuts.ts';
import type { CutNode } from '../../../../server/planning/plan-output.ts';

const offcut = (lengthMm: number, widthMm: number): CutNode => ({ type: 'offcut', lengthMm, widthMm });
const sheet = (children: CutNode[]): { cut: CutNode } => ({
  cut: { type: 'split', along: 'width', lengthMm: 2000, widthMm: 1000, children },
});

describe('the offcuts of a layout', () => {
  it('are counted by size, largest first, without parts and waste', () => {
    const part: CutNode = { type: 'part', partId: '1', turned: false, lengthMm: 900, widthMm: 900 };
    const inner: CutNode = { ...(sheet([offcut(300, 200), part]).cut as CutNode & { type: 'split' }) };
    const cut = sheet([offcut(300, 200), offcut(1000, 49), offcut(400, 200), inner]);
    expect(keptOffcuts(cut, 'sheet')).toEqual([
      { lengthMm: 400, widthMm: 200, count: 1 },
      { lengthMm: 300, widthMm: 200, count: 2 },
    ]);
  });

  it('of a board may be narrow: what counts is the length', () => {
    expect(keptOffcuts(sheet([offcut(1000, 40), offcut(49, 40)]), 'board')).toEqual([
      { lengthMm: 1000, widthMm: 40, count: 1 },
    ]);
    expect(keptOffcuts(sheet([]), 'sheet')).toEqual([]);
  });
});
