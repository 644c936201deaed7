import { describe, expect, it } from 'vitest';
import type { SheetPiece } from '../../../client/drawing/sheet-pieces.ts';
import { keepOffcut } from '../../../client/screens/cutting/keep-offcut.ts';
import { offcutsOf } from '../../../client/screens/cutting/offcuts.ts';

const piece = (type: SheetPiece['type'], lengthMm: number, widthMm: number): SheetPiece => ({
  type,
  partId: type === 'part' ? '1' : null,
  turned: false,
  x: 0,
  y: 0,
  width: 1,
  height: 1,
  lengthMm,
  widthMm,
});

describe('the offcuts of a layout', () => {
  it('are counted over all its sheets, largest first, without parts and waste', () => {
    const pieces = [
      piece('offcut', 300, 200),
      piece('offcut', 1000, 49),
      piece('offcut', 400, 200),
      piece('offcut', 300, 200),
      piece('part', 900, 900),
    ];
    // Two of 300 x 200 on each of 3 sheets.
    expect(offcutsOf(pieces, 'sheet', 3)).toEqual(
      [
        { lengthMm: 300, widthMm: 200, count: 6 },
        { lengthMm: 400, widthMm: 200, count: 3 },
      ].toReversed(),
    );
    // A board may be narrow; what counts is its length.
    expect(offcutsOf([piece('offcut', 1000, 40), piece('offcut', 40, 40)], 'board', 1)).toEqual([
      { lengthMm: 1000, widthMm: 40, count: 1 },
    ]);
  });
});

describe('keeping an offcut', () => {
  const offcut = { lengthMm: 600, widthMm: 300, count: 2 };
  const row = {
    id: '9',
    position: 1,
    productId: 'ply',
    amount: 1,
    count: 1,
    lengthMm: 600.004,
    widthMm: 300,
  };

  it('adds a piece of a sheet with its size', () => {
    expect(keepOffcut('ply', 'sheet', offcut, [])).toEqual({
      op: 'insert',
      table: 'onHand',
      values: { productId: 'ply', amount: 1, count: 2, lengthMm: 600, widthMm: 300 },
    });
  });

  it('counts one more where the same piece of the same material is on hand', () => {
    expect(keepOffcut('ply', 'sheet', offcut, [row])).toEqual({
      op: 'update',
      table: 'onHand',
      id: '9',
      values: { count: 3 },
    });
    expect(keepOffcut('oak', 'sheet', offcut, [row]).op).toBe('insert');
    expect(keepOffcut('ply', 'sheet', { ...offcut, widthMm: 301 }, [row]).op).toBe('insert');
  });

  it('adds a board by its length in metres', () => {
    expect(keepOffcut('pine', 'board', offcut, [])).toEqual({
      op: 'insert',
      table: 'onHand',
      values: { productId: 'pine', amount: 0.6, count: 2, lengthMm: null, widthMm: null },
    });
  });
});
