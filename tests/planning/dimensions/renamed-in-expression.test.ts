import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseExpression } from '../../../server/planning/dimensions/parse-expression.ts';
import { renamedInExpression } from '../../../server/planning/dimensions/renamed-in-expression.ts';

describe('renamedInExpression', () => {
  it.each([
    ['=2*Ply - ply_back', '=2*board - ply_back'],
    ['=ply', '=board'],
    ['  = ply+PLY /pLy ', '  = board+board /board '],
    ['=ply2 + _ply + plyply + ply', '=ply2 + _ply + plyply + board'],
    ['=max(ply; 2*(ply − 3 mm))', '=max(board; 2*(board − 3 mm))'],
    ['=-ply × 2', '=-board × 2'],
    // Nothing to find, or not to be read.
    ['=seat_depth - 36 mm', '=seat_depth - 36 mm'],
    ['=ply +', '=ply +'],
    ['=2ply', '=2ply'],
    ['ply', 'ply'],
    ['18 mm ply', '18 mm ply'],
    ['', ''],
  ])('makes %s, with ply called board, %s', (text, expected) => {
    expect(renamedInExpression(text, 'ply', 'board')).toBe(expected);
  });

  it('leaves units and functions alone that are spelled like the size', () => {
    expect(renamedInExpression('=2 m + m', 'm', 'gap')).toBe('=2 m + gap');
    expect(renamedInExpression('=min(min, 3 mm)', 'min', 'least')).toBe('=min(least, 3 mm)');
  });

  it('finds letters of any script, composed or not', () => {
    expect(renamedInExpression('=2*GRÖSSE + größe', 'größe', 'höhe')).toBe('=2*GRÖSSE + höhe');
    expect(renamedInExpression('=Größe - 1 mm', 'gro\u0308ße', 'höhe')).toBe('=höhe - 1 mm');
  });

  it('takes a replacement as it stands, whatever a pattern would make of it', () => {
    expect(renamedInExpression('=ply + ply', 'ply', '$&')).toBe('=$& + $&');
  });

  it('comes back to the text by the reverse rename, and keeps every other name', () => {
    const term = fc.oneof(
      fc.constantFrom('ply', 'depth', 'ply_back', '18 mm', '2', '(ply + 3 mm)', 'max(ply, depth)', '3/4"'),
      fc.nat(900).map(String),
    );
    const sum = fc
      .tuple(term, fc.array(fc.tuple(fc.constantFrom('+', ' - ', '*', ' / '), term), { maxLength: 6 }))
      .map(([first, rest]) => `=${first}${rest.flat().join('')}`);
    const namesOf = (text: string) => {
      const parsed = parseExpression(text);
      return parsed.ok ? parsed.names : [];
    };
    let found = 0;
    fc.assert(
      fc.property(sum, (text) => {
        const renamed = renamedInExpression(text, 'ply', 'board');
        expect(renamedInExpression(renamed, 'board', 'ply')).toBe(text);
        expect(namesOf(renamed)).toEqual(namesOf(text).map((name) => (name === 'ply' ? 'board' : name)));
        if (renamed !== text) found++;
      }),
    );
    expect(found).toBeGreaterThan(20);
  });
});
