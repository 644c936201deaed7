import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  columnOrder,
  movedColumn,
  movedGroup,
  type PlacedColumn,
} from '../../../client/grid/column-layout.ts';
import { readColumnLayout, writeColumnLayout } from '../../../client/grid/read-column-layout.ts';

const COLUMNS: readonly PlacedColumn[] = [
  { id: 'number', pinned: true },
  { id: 'name', pinned: true },
  { id: 'length' },
  { id: 'width' },
  { id: 'front', group: 'Edges' },
  { id: 'back', group: 'Edges' },
  { id: 'note' },
];
const USUAL = COLUMNS.map(({ id }) => id);

describe('the order of columns', () => {
  it('is the usual one until another is wanted', () => {
    expect(columnOrder(COLUMNS, [])).toEqual(USUAL);
  });

  it('is the wanted one, with pinned columns first and groups together', () => {
    expect(columnOrder(COLUMNS, ['note', 'back', 'width', 'front', 'length', 'name', 'number'])).toEqual([
      'number',
      'name',
      'note',
      'back',
      'front',
      'width',
      'length',
    ]);
  });

  it('puts a column it does not know behind its usual neighbour, and forgets columns that are gone', () => {
    expect(columnOrder(COLUMNS, ['note', 'length', 'gone', 'front', 'back'])).toEqual([
      'number',
      'name',
      'note',
      'length',
      'width',
      'front',
      'back',
    ]);
  });

  it('holds every column once, whatever is wanted', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...USUAL, 'gone', '')), (wanted) => {
        const order = columnOrder(COLUMNS, wanted);
        expect(order.toSorted()).toEqual(USUAL.toSorted());
        expect(order.slice(0, 2)).toEqual(['number', 'name']);
        expect(Math.abs(order.indexOf('front') - order.indexOf('back'))).toBe(1);
      }),
    );
  });
});

describe('moving a column', () => {
  it('swaps it with its neighbour, and passes a group as a whole', () => {
    expect(movedColumn(COLUMNS, [], 'length', 1)?.slice(2)).toEqual([
      'width',
      'length',
      'front',
      'back',
      'note',
    ]);
    expect(movedColumn(COLUMNS, [], 'note', -1)?.slice(2)).toEqual([
      'length',
      'width',
      'note',
      'front',
      'back',
    ]);
  });

  it('stays within its group, and the group moves by itself', () => {
    expect(movedColumn(COLUMNS, [], 'front', 1)?.slice(4, 6)).toEqual(['back', 'front']);
    expect(movedColumn(COLUMNS, [], 'back', 1)).toBeNull();
    expect(movedGroup(COLUMNS, [], 'Edges', -1)?.slice(2)).toEqual([
      'length',
      'front',
      'back',
      'width',
      'note',
    ]);
    expect(movedGroup(COLUMNS, [], 'Corners', 1)).toBeNull();
  });

  it('ends at the pinned columns and at the last one', () => {
    expect(movedColumn(COLUMNS, [], 'length', -1)).toBeNull();
    expect(movedColumn(COLUMNS, [], 'note', 1)).toBeNull();
    expect(movedColumn(COLUMNS, [], 'name', 1)).toBeNull();
  });

  it('is undone by moving it the other way', () => {
    fc.assert(
      fc.property(fc.constantFrom(...USUAL), fc.constantFrom(1 as const, -1 as const), (id, step) => {
        const there = movedColumn(COLUMNS, [], id, step);
        if (there === null) return;
        expect(movedColumn(COLUMNS, there, id, step === 1 ? -1 : 1)).toEqual(USUAL);
      }),
    );
  });
});

describe('a stored layout', () => {
  const layout = { order: ['note', 'length'], visible: { width: false }, widths: { note: 310 } };

  it('comes back as it was', () => {
    expect(readColumnLayout(writeColumnLayout(layout))).toEqual(layout);
  });

  it('counts as never said when it is junk or of another version', () => {
    const usual = { order: [], visible: {}, widths: {} };
    for (const junk of [null, '', '{', '7', 'null', '[]', '"x"', '{"version":2,"order":["note"]}'])
      expect(readColumnLayout(junk)).toEqual(usual);
  });

  it('keeps what is sound in it and drops the rest', () => {
    const text = JSON.stringify({
      version: 1,
      order: ['note', 4, null],
      visible: { width: false, note: 'yes' },
      widths: { note: 9, length: '100', width: 80, name: 1e9 },
    });
    expect(readColumnLayout(text)).toEqual({
      order: ['note'],
      visible: { width: false },
      widths: { width: 80 },
    });
  });
});
