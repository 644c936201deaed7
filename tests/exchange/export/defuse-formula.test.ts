import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defuseFormula, withoutDefusing } from '../../../server/exchange/export/defuse-formula.ts';

describe('defusing a formula', () => {
  // The six characters of OWASP, "CSV Injection", each at the beginning of a cell.
  it.each(['=', '+', '-', '@', '\t', '\r'])(
    'puts a single quote before a text that begins with %j',
    (start) => {
      expect(defuseFormula(`${start}1+1`)).toBe(`'${start}1+1`);
      expect(defuseFormula(start)).toBe(`'${start}`);
    },
  );

  it('leaves every other text as it is, also one with such a character further on', () => {
    for (const text of ['', 'Side', '2-3', 'a=b', "'quoted'", ' =1', '1+1', '«-»'])
      expect(defuseFormula(text)).toBe(text);
  });

  it('is taken back exactly, whatever the text, also one that looks defused already', () => {
    expect(defuseFormula("'=1")).toBe("''=1");
    const starts = fc.constantFrom('', "'", "''", '=', "'=", "''-", '\t', '@');
    fc.assert(
      fc.property(starts, fc.string(), (start, rest) => {
        const text = start + rest;
        expect(withoutDefusing(defuseFormula(text))).toBe(text);
        expect(defuseFormula(text)).not.toMatch(/^[=+\-@\t\r]/);
      }),
    );
  });
});
