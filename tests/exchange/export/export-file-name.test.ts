import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exportFileName } from '../../../server/exchange/export/export-file-name.ts';

const ALLOWED = /^[^\s.\\/:*?"<>|\p{C}][^\\/:*?"<>|\p{C}]* - parts\.csv$/u;

describe('the name of an exported file', () => {
  it('holds the project, the table and the ending', () => {
    expect(exportFileName('Hall bookcase', 'buy list', 'csv')).toBe('Hall bookcase - buy list.csv');
    expect(exportFileName('Hall bookcase', '', 'plywright.json')).toBe('Hall bookcase.plywright.json');
  });

  it('keeps letters of any script and drops what a file system refuses', () => {
    expect(exportFileName('Bücherregal: 2/3 "für" 棚', 'parts', 'csv')).toBe(
      'Bücherregal 2 3 für 棚 - parts.csv',
    );
    expect(exportFileName('..\\..\\etc/passwd\n', 'parts', 'csv')).toBe('etc passwd - parts.csv');
  });

  it('is never empty, hidden, a path or too long', () => {
    expect(exportFileName(' ../. ', 'parts', 'csv')).toBe('project - parts.csv');
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (name) => {
        const file = exportFileName(name, 'parts', 'csv');
        expect(file).toMatch(ALLOWED);
        expect([...file].length).toBeLessThanOrEqual(80 + ' - parts.csv'.length);
      }),
    );
  });
});
