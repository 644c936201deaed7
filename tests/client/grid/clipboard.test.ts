import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseTsv, toHtmlTable, toTsv } from '../../../client/grid/clipboard.ts';

describe('clipboard text', () => {
  it('divides lines at line breaks and cells at tabs, whichever line break is used', () => {
    expect(parseTsv('a\tb\nc\td')).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ]);
    expect(parseTsv('a\tb\r\nc\td\r\n')).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ]);
  });

  it('keeps empty cells and empty lines in the middle, and drops only the closing line break', () => {
    expect(parseTsv('a\t\t\n\n\tb\n')).toEqual([['a', '', ''], [''], ['', 'b']]);
    expect(parseTsv('')).toEqual([['']]);
  });

  it('reads a quoted cell with a line break, a tab and a doubled mark inside', () => {
    expect(parseTsv('"two\nlines"\t"say ""so"""\n"tab\there"')).toEqual([
      ['two\nlines', 'say "so"'],
      ['tab\there'],
    ]);
  });

  it('takes inch marks as they are', () => {
    expect(parseTsv('23 5/8"\t6\' 7 1/2"\n".714\t600')).toEqual([
      ['23 5/8"', '6\' 7 1/2"'],
      ['".714', '600'],
    ]);
  });

  it('quotes on the way out only what would be misread on the way in', () => {
    expect(
      toTsv([
        ['23 5/8"', 'plain'],
        ['"x', 'a\tb'],
      ]),
    ).toBe('23 5/8"\tplain\r\n"""x"\t"a\tb"');
  });

  it('reads back whatever it wrote', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '"', '\t', '\n', ' ', "'", '=', '⅝') });
    const rows = fc
      .integer({ min: 1, max: 4 })
      .chain((width) =>
        fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 5 }),
      );
    fc.assert(
      fc.property(rows, (written) => {
        // One empty cell alone is the same text as nothing at all.
        fc.pre(!(written.at(-1)?.length === 1 && written.at(-1)?.[0] === ''));
        expect(parseTsv(toTsv(written))).toEqual(written);
      }),
    );
  });

  it('escapes markup in the table form', () => {
    expect(toHtmlTable([['<b>&', 'x']])).toBe(
      '<table><tbody><tr><td>&lt;b&gt;&amp;</td><td>x</td></tr></tbody></table>',
    );
  });
});
