import { describe, expect, it } from 'vitest';
import { fillDown, fillRight, fillTo, layBlock } from '../../../client/grid/fill.ts';

const pairs = (
  copies: readonly { from: { row: number; column: number }; to: { row: number; column: number } }[],
): string[] => copies.map(({ from, to }) => `${from.row},${from.column}>${to.row},${to.column}`);

describe('filling', () => {
  it('down repeats the first row of the range over the others', () => {
    expect(pairs(fillDown({ top: 1, left: 2, bottom: 3, right: 3 }))).toEqual([
      '1,2>2,2',
      '1,3>2,3',
      '1,2>3,2',
      '1,3>3,3',
    ]);
  });

  it('down on a single row takes the row above, and does nothing on the first row', () => {
    expect(pairs(fillDown({ top: 4, left: 0, bottom: 4, right: 1 }))).toEqual(['3,0>4,0', '3,1>4,1']);
    expect(fillDown({ top: 0, left: 0, bottom: 0, right: 1 })).toEqual([]);
  });

  it('right repeats the first column, or takes the column to the left of a single one', () => {
    expect(pairs(fillRight({ top: 0, left: 1, bottom: 1, right: 2 }))).toEqual(['0,1>0,2', '1,1>1,2']);
    expect(pairs(fillRight({ top: 0, left: 3, bottom: 0, right: 3 }))).toEqual(['0,2>0,3']);
    expect(fillRight({ top: 0, left: 0, bottom: 5, right: 0 })).toEqual([]);
  });

  it('by the handle goes the way the pointer went further and repeats the pattern in step', () => {
    const range = { top: 2, left: 1, bottom: 3, right: 1 };
    const down = fillTo(range, { row: 6, column: 2 });
    expect(down?.target).toEqual({ top: 4, left: 1, bottom: 6, right: 1 });
    expect(pairs(down?.copies ?? [])).toEqual(['2,1>4,1', '3,1>5,1', '2,1>6,1']);
    const up = fillTo(range, { row: 1, column: 1 });
    expect(pairs(up?.copies ?? [])).toEqual(['3,1>1,1']);
    const right = fillTo(range, { row: 3, column: 3 });
    expect(pairs(right?.copies ?? [])).toEqual(['2,1>2,2', '2,1>2,3', '3,1>3,2', '3,1>3,3']);
    const left = fillTo(range, { row: 2, column: 0 });
    expect(pairs(left?.copies ?? [])).toEqual(['2,1>2,0', '3,1>3,0']);
  });

  it('by the handle does nothing while the pointer is inside the range', () => {
    expect(fillTo({ top: 2, left: 1, bottom: 5, right: 4 }, { row: 3, column: 3 })).toBeNull();
  });
});

describe('a pasted block', () => {
  const lay = (block: string[][], range: Parameters<typeof layBlock>[1]): string[] =>
    layBlock(block, range).map(({ to, text }) => `${text}@${to.row},${to.column}`);

  it('of one cell fills the whole range', () => {
    expect(lay([['x']], { top: 0, left: 0, bottom: 1, right: 1 })).toEqual([
      'x@0,0',
      'x@0,1',
      'x@1,0',
      'x@1,1',
    ]);
  });

  it('that divides the range is repeated over it', () => {
    expect(lay([['a'], ['b']], { top: 0, left: 3, bottom: 3, right: 3 })).toEqual([
      'a@0,3',
      'b@1,3',
      'a@2,3',
      'b@3,3',
    ]);
  });

  it('that does not divide the range is laid once, past the end of the range if need be', () => {
    expect(
      lay(
        [
          ['a', 'b'],
          ['c', 'd'],
        ],
        { top: 5, left: 1, bottom: 7, right: 1 },
      ),
    ).toEqual(['a@5,1', 'b@5,2', 'c@6,1', 'd@6,2']);
  });

  it('with lines of unequal length leaves what it does not cover alone', () => {
    expect(lay([['a', 'b'], ['c']], { top: 0, left: 0, bottom: 0, right: 0 })).toEqual([
      'a@0,0',
      'b@0,1',
      'c@1,0',
    ]);
    expect(lay([], { top: 0, left: 0, bottom: 0, right: 0 })).toEqual([]);
  });
});
