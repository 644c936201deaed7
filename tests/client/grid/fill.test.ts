import { describe, expect, it } from 'vitest';
import { copiesOf, type Fill, fillDown, fillRight, fillTo, layBlock } from '../../../client/grid/fill.ts';
import { fillTexts } from '../../../client/grid/fill-texts.ts';

const pairs = (fill: Fill | null): string[] =>
  fill === null
    ? []
    : copiesOf(fill).map(({ from, to }) => `${from.row},${from.column}>${to.row},${to.column}`);

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
    expect(fillDown({ top: 0, left: 0, bottom: 0, right: 1 })).toBeNull();
  });

  it('right repeats the first column, or takes the column to the left of a single one', () => {
    expect(pairs(fillRight({ top: 0, left: 1, bottom: 1, right: 2 }))).toEqual(['0,1>0,2', '1,1>1,2']);
    expect(pairs(fillRight({ top: 0, left: 3, bottom: 0, right: 3 }))).toEqual(['0,2>0,3']);
    expect(fillRight({ top: 0, left: 0, bottom: 5, right: 0 })).toBeNull();
  });

  it('by the handle goes the way the pointer went further and repeats the pattern in step', () => {
    const range = { top: 2, left: 1, bottom: 3, right: 1 };
    const down = fillTo(range, { row: 6, column: 2 });
    expect(down?.target).toEqual({ top: 4, left: 1, bottom: 6, right: 1 });
    expect(pairs(down)).toEqual(['2,1>4,1', '3,1>5,1', '2,1>6,1']);
    expect(pairs(fillTo(range, { row: 1, column: 1 }))).toEqual(['3,1>1,1']);
    expect(pairs(fillTo(range, { row: 3, column: 3 }))).toEqual(['2,1>2,2', '2,1>2,3', '3,1>3,2', '3,1>3,3']);
    expect(pairs(fillTo(range, { row: 2, column: 0 }))).toEqual(['2,1>2,0', '3,1>3,0']);
  });

  it('by the handle does nothing while the pointer is inside the range', () => {
    expect(fillTo({ top: 2, left: 1, bottom: 5, right: 4 }, { row: 3, column: 3 })).toBeNull();
  });
});

describe('what a fill writes', () => {
  /** A sheet of typed cells; those of a column in `listed` are of a list, which cannot count. */
  const writes = (
    sheet: readonly (readonly string[])[],
    fill: Fill | null,
    { alone = false, grows = false, listed = [] as number[] } = {},
  ): string[] =>
    fill === null
      ? []
      : fillTexts(
          fill,
          ({ row, column }) => {
            const text = sheet[row]?.[column];
            return text === undefined
              ? null
              : { held: `${text}!`, typed: text, counts: !listed.includes(column) };
          },
          { alone, grows },
        ).map(({ to, text }) => `${text}@${to.row},${to.column}`);
  const column = (...texts: string[]): string[][] => texts.map((text) => [text]);
  const cell = (top: number, bottom = top) => ({ top, bottom, left: 0, right: 0 });

  it('is what the source holds, when it shows no step', () => {
    expect(writes(column('a', ''), fillTo(cell(0), { row: 1, column: 0 }))).toEqual(['a!@1,0']);
    expect(writes(column('Shelf 1', ''), fillTo(cell(0), { row: 1, column: 0 }))).toEqual(['Shelf 1!@1,0']);
  });

  it('goes on from two cells with a step, downwards and upwards', () => {
    const sheet = column('', '300', '350', '', '');
    expect(writes(sheet, fillTo(cell(1, 2), { row: 4, column: 0 }))).toEqual(['400@3,0', '450@4,0']);
    expect(writes(sheet, fillTo(cell(1, 2), { row: 0, column: 0 }))).toEqual(['250@0,0']);
  });

  it('counts on from one cell when that is asked for, each column by itself', () => {
    const sheet = [
      ['Shelf 1', 'ply'],
      ['', ''],
      ['', ''],
    ];
    const range = { top: 0, bottom: 0, left: 0, right: 1 };
    expect(writes(sheet, fillTo(range, { row: 2, column: 1 }), { alone: true })).toEqual([
      'Shelf 2@1,0',
      'Shelf 3@2,0',
      'ply!@1,1',
      'ply!@2,1',
    ]);
  });

  it('goes on to the right as well', () => {
    expect(
      writes([['1', '2', '', '']], fillTo({ top: 0, bottom: 0, left: 0, right: 1 }, { row: 0, column: 3 })),
    ).toEqual(['3@0,2', '4@0,3']);
  });

  it('never counts in a column that takes one of a list', () => {
    const sheet = column('ply 18', 'ply 19', '');
    expect(writes(sheet, fillTo(cell(0, 1), { row: 2, column: 0 }), { listed: [0] })).toEqual([
      'ply 18!@2,0',
    ]);
  });

  it('by Ctrl+D goes on with what is begun, when the rest of the range is empty', () => {
    const down = fillDown(cell(0, 4));
    expect(writes(column('S 1', 'S 2', '', '', ''), down, { grows: true })).toEqual([
      'S 3@2,0',
      'S 4@3,0',
      'S 5@4,0',
    ]);
    // A full range takes its first row, as ever.
    expect(writes(column('S 1', 'S 2', 'S 3', 'x', 'y'), down, { grows: true })[3]).toBe('S 1!@4,0');
    // So does a beginning that is no series.
    expect(writes(column('S', 'T', '', '', ''), down, { grows: true })[0]).toBe('S!@1,0');
  });

  it('leaves cells alone whose source is not there, or for which the series has no number', () => {
    expect(writes([], fillTo(cell(0), { row: 2, column: 0 }))).toEqual([]);
    expect(writes(column('2', '1', '', '', ''), fillTo(cell(0, 1), { row: 4, column: 0 }))).toEqual([
      '0@2,0',
    ]);
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
