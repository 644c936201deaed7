import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { previewImport } from '../../server/exchange/import/preview-import.ts';
import { readTextCells } from '../../server/exchange/part-list/read-cells.ts';
import { readLengthCell, readQuantityCell } from '../../server/planning/dimensions/read-cell.ts';
import { readSizeSet } from '../../server/planning/dimensions/read-size-set.ts';
import { renamedInExpression } from '../../server/planning/dimensions/renamed-in-expression.ts';
import { selfContainedExpression } from '../../server/planning/dimensions/self-contained-expression.ts';
import type { UnitSystem } from '../../server/planning/project-input.ts';

const CODE_POINTS = 10_000;

/** Ten thousand code points of any plane, halves of surrogate pairs among them, or of what sizes are written with. */
const longText = fc.oneof(
  fc.string({ unit: 'binary', minLength: CODE_POINTS, maxLength: CODE_POINTS, size: 'max' }),
  fc
    .array(
      fc.constantFrom(
        '0',
        '1',
        '/',
        '½',
        '"',
        "'",
        ' ',
        '(',
        ')',
        '-',
        '+',
        ',',
        '.',
        '\t',
        '\n',
        ';',
        '=',
        'x',
      ),
      {
        minLength: CODE_POINTS,
        maxLength: CODE_POINTS,
        size: 'max',
      },
    )
    .map((some) => some.join('')),
  fc.constantFrom('(', '-', '9', '1/', '½', '=(', '",', "'").map((piece) => piece.repeat(CODE_POINTS)),
  fc
    .array(fc.integer({ min: 0, max: 0xffff }), {
      minLength: CODE_POINTS,
      maxLength: CODE_POINTS,
      size: 'max',
    })
    .map((codes) => codes.map((code) => String.fromCharCode(code)).join('')),
);

describe('ten thousand random code points', () => {
  it('never throw, wherever they are typed or pasted', () => {
    fc.assert(
      fc.property(longText, fc.constantFrom<UnitSystem>('metric', 'us'), (text, units) => {
        const scope = { units, values: new Map(), named: new Map() };
        for (const typed of [text, `=${text}`]) {
          expect(readLengthCell(typed, scope).value).toBeNull();
          expect(readQuantityCell(typed, scope).value).toBeNull();
          selfContainedExpression(typed, units);
          renamedInExpression(typed, 'ply', 'board');
        }
        expect(readSizeSet(text, units).ok).toBe(false);
        previewImport(readTextCells(text), {}, { units, products: [], recipes: [] });
      }),
      { numRuns: 40 },
    );
  });
});
