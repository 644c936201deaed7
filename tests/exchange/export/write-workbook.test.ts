import readXlsxFile from 'read-excel-file/node';
import { describe, expect, it } from 'vitest';
import type { ExportCell, ExportTable } from '../../../server/exchange/export/export-table.ts';
import { writeWorkbook } from '../../../server/exchange/export/write-workbook.ts';
import { openArchive } from '../../../server/exchange/import/open-archive.ts';

function table(title: string, rows: readonly (readonly ExportCell[])[]): ExportTable {
  return {
    name: 'parts',
    title,
    columns: [
      { heading: 'Part', kind: 'text', decimals: null, width: 28 },
      { heading: 'Length (mm)', kind: 'number', decimals: null, width: 13 },
      { heading: 'Cost (EUR)', kind: 'money', decimals: 2, width: 12 },
    ],
    rows,
  };
}

async function textOf(workbook: Buffer, path: string): Promise<string> {
  const archive = openArchive(workbook, 10_000_000);
  if (!archive.ok) throw new Error(archive.fault);
  return archive.entries.find((entry) => entry.path === path)?.data.toString('utf8') ?? '';
}

describe('tables as a workbook', () => {
  it('are one sheet each, named, with numbers as numbers and unknown cells empty', async () => {
    const workbook = await writeWorkbook([
      table('Parts', [
        ['Side', 600.075, 12.5],
        ['Top', null, null],
      ]),
      table('Cut list', [['Side', 0, 0]]),
    ]);
    expect(await readXlsxFile(workbook)).toEqual([
      {
        sheet: 'Parts',
        data: [
          ['Part', 'Length (mm)', 'Cost (EUR)'],
          ['Side', 600.075, 12.5],
          ['Top', null, null],
        ],
      },
      {
        sheet: 'Cut list',
        data: [
          ['Part', 'Length (mm)', 'Cost (EUR)'],
          ['Side', 0, 0],
        ],
      },
    ]);
  });

  it('have a bold heading line that stays in view, column widths, and money with its decimals', async () => {
    const workbook = await writeWorkbook([table('Parts', [['Side', 600, 12.5]])]);
    const sheet = await textOf(workbook, 'xl/worksheets/sheet1.xml');
    expect(sheet).toMatch(/<pane [^>]*ySplit="1"[^>]*state="frozen"/);
    expect(sheet).toContain('<col min="1" max="1" width="28"');
    const styles = await textOf(workbook, 'xl/styles.xml');
    expect(styles).toContain('<b/>');
    expect(styles).toContain('formatCode="#,##0.00"');
  });

  it('hold no formula, whatever a text begins with', async () => {
    const texts = ['=1+1', '+1', '-1', '@SUM(A1)', '=HYPERLINK("http://x","y")'];
    const workbook = await writeWorkbook([
      table(
        'Parts',
        texts.map((text) => [text, null, null]),
      ),
    ]);
    expect(await textOf(workbook, 'xl/worksheets/sheet1.xml')).not.toContain('<f>');
    const [sheet] = await readXlsxFile(workbook);
    expect(sheet?.data.slice(1).map((row) => row[0])).toEqual(texts);
  });

  it('keep letters, marks and line breaks as they are', async () => {
    const texts = [
      '23⅝" × ½',
      '<b>&amp;"',
      'two\nlines',
      '棚 ü 🪵',
      "it's",
      'part_x0041_b',
      'valueOf',
      'constructor',
      '__proto__',
    ];
    const workbook = await writeWorkbook([
      table(
        'Parts',
        texts.map((text) => [text, null, null]),
      ),
    ]);
    const [sheet] = await readXlsxFile(workbook);
    expect(sheet?.data.slice(1).map((row) => row[0])).toEqual(texts);
  });

  it('are written also when a table has no rows', async () => {
    const [sheet] = await readXlsxFile(await writeWorkbook([table('Parts', [])]));
    expect(sheet?.data).toEqual([['Part', 'Length (mm)', 'Cost (EUR)']]);
  });
});
