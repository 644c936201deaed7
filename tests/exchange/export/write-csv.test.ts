import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { withoutDefusing } from '../../../server/exchange/export/defuse-formula.ts';
import type { ExportCell, ExportTable } from '../../../server/exchange/export/export-table.ts';
import { writeCsv } from '../../../server/exchange/export/write-csv.ts';

function table(rows: readonly (readonly ExportCell[])[], moneyDigits = 2): ExportTable {
  return {
    name: 'parts',
    title: 'Parts',
    columns: [
      { heading: 'Part', kind: 'text', decimals: null, width: 10 },
      { heading: 'Length (mm)', kind: 'number', decimals: null, width: 10 },
      { heading: 'Cost, all', kind: 'money', decimals: moneyDigits, width: 10 },
    ],
    rows,
  };
}
/** What follows the heading line. */
const body = (rows: readonly (readonly ExportCell[])[], moneyDigits?: number): string =>
  writeCsv(table(rows, moneyDigits)).split('\r\n').slice(1).join('\r\n');

describe('a table as CSV', () => {
  it('begins with a byte order mark and a heading line, and ends every line with CRLF (RFC 4180 section 2)', () => {
    expect(writeCsv(table([]))).toBe('\uFEFFPart,Length (mm),"Cost, all"\r\n');
    expect(writeCsv(table([['Side', 600, 1]]))).toMatch(/\r\nSide,600,1\.00\r\n$/);
  });

  it('quotes commas, quotes and line breaks, and doubles quotes (RFC 4180 rules 6 and 7)', () => {
    expect(body([['a, "b"\nc', null, null]])).toBe('"a, ""b""\nc",,\r\n');
  });

  it('writes numbers with all their digits and a point, and what is not known as nothing', () => {
    expect(body([['a', 600.075, 12.5]])).toBe('a,600.075,12.50\r\n');
    expect(body([['a', 2440000, 1100]])).toBe('a,2440000,1100.00\r\n');
    expect(body([['a', 1 / 3, 0]])).toBe('a,0.333333,0.00\r\n');
    expect(body([['', null, null]])).toBe(',,\r\n');
    expect(body([['a', 0, null]])).toBe('a,0,\r\n');
  });

  it('gives money the decimals of its currency', () => {
    expect(body([['yen', null, 1234]], 0)).toBe('yen,,1234\r\n');
    expect(body([['dinar', null, 1.5]], 3)).toBe('dinar,,1.500\r\n');
  });

  it('defuses texts that a spreadsheet would run, and leaves genuine negative numbers alone', () => {
    expect(body([['=HYPERLINK("x")', -600.5, -1]])).toBe('"\'=HYPERLINK(""x"")",-600.5,-1.00\r\n');
  });

  it('is read back by another reader of CSV as the same cells', () => {
    const cell = fc.oneof(fc.string({ unit: 'grapheme' }), fc.constantFrom('=1', '"', ',', '\r\n', "'-", ''));
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, fc.integer()), { minLength: 1 }), (rows) => {
        const text = writeCsv(table(rows.map(([name, size]) => [name, size, null])));
        const { data, errors } = Papa.parse<string[]>(text.slice(1, -2), { delimiter: ',', newline: '\r\n' });
        expect(errors).toEqual([]);
        expect(data.slice(1).map(([name, size]) => [withoutDefusing(name ?? ''), Number(size)])).toEqual(
          rows.map(([name, size]) => [name, size === 0 ? 0 : size]),
        );
      }),
    );
  });
});
