import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import writeXlsxFile from 'write-excel-file/node';
import { readSource, type Source } from '../../../server/exchange/import/read-source.ts';
import { workbookFiles, zipArchive } from './zip-archive.ts';

async function rowsOf(source: Source): Promise<readonly (readonly string[])[]> {
  const read = await readSource(source);
  if (!read.ok) throw new Error(read.refusal.message);
  return read.table.rows;
}
/** The message of a refusal, with whether the source was too large. */
async function refusalOf(source: Source): Promise<string> {
  const read = await readSource(source);
  if (read.ok) throw new Error(`read ${JSON.stringify(read.table.rows).slice(0, 200)}`);
  expect(read.refusal.wayOut).toMatch(/\.$/);
  return `${read.refusal.tooLarge ? 'too large: ' : ''}${read.refusal.message}`;
}
const cell = (at: string, value: number | string): string => `<c r="${at}"><v>${value}</v></c>`;
const sheet = (rows: string): Source => ({ workbook: zipArchive(workbookFiles(rows)) });

describe('reading a pasted list', () => {
  it('takes the quote away that keeps a spreadsheet from running a text', async () => {
    expect(await rowsOf({ text: "Part,Qty,L,W\n'=side,2,600,300\n'top',1,700,300" })).toEqual([
      ['Part', 'Qty', 'L', 'W'],
      ['=side', '2', '600', '300'],
      ["'top'", '1', '700', '300'],
    ]);
  });

  it('passes over a first line that only names the separator, and counts it as a line', async () => {
    const read = await readSource({ text: '\uFEFFsep=;\r\nPart;Qty;L;W\r\nSide;2;600,5;300\r\n' });
    expect(read.ok && [read.table.split, read.table.lines]).toEqual([';', [2, 3]]);
  });

  it.each([
    ['', 'The list is empty.'],
    ['  \n\t\n', 'The list is empty.'],
    ['%PDF-1.7\n…', 'This is a PDF document, not a part list.'],
    ['{\\rtf1 Side}', 'This is a document of a word processor, not a part list.'],
    ['<!DOCTYPE html><table>', 'This is a web page, not a part list.'],
    ['PK\u0003\u0004\u0014', 'This is a workbook or an archive read as text, not a part list.'],
    ['Side\0\0,2', 'This is not text, not a part list.'],
  ])('refuses %j in plain words', async (text, message) => {
    expect(await refusalOf({ text })).toBe(message);
  });

  it('lets a stray odd character pass', async () => {
    expect(
      await rowsOf({ text: `Part,Qty,L,W\nSide\uFFFD,2,600,300\n${'Top,1,700,300\n'.repeat(10)}` }),
    ).toHaveLength(12);
  });

  it('takes 2 MB and 20,000 rows, and refuses more', async () => {
    const line = 'Side,2,600,300\n';
    expect(await rowsOf({ text: `Part,Qty,L,W\n${line.repeat(20_000)}` })).toHaveLength(20_001);
    expect(await refusalOf({ text: line.repeat(20_002) })).toMatch(/^too large: The list has 20002 rows/);
    const long = `${'x'.repeat(999)}\n`;
    expect(await rowsOf({ text: long.repeat(2000) })).toHaveLength(2000);
    expect(await refusalOf({ text: `${long.repeat(2000)}x` })).toBe(
      'too large: The list has 2.1 MB; at most 2 MB can be read.',
    );
  });

  it('refuses a line of more columns than a list has, before it makes a table of it', async () => {
    const text = `${','.repeat(500_000)}\n${'a\n'.repeat(500_000)}`;
    expect(await refusalOf({ text })).toContain('more than 200 columns');
    expect(await rowsOf({ text: `${'a,'.repeat(199)}a` })).toHaveLength(1);
  });
});

describe('reading a workbook', () => {
  it('reads the first sheet; numbers lose only what the floating point added', async () => {
    const workbook = await writeXlsxFile([
      [{ value: 'Part' }, { value: 'Length (mm)' }],
      [{ value: '=side' }, { value: 0.1 + 0.2, type: Number }],
    ]).toBuffer();
    expect(await rowsOf({ workbook })).toEqual([
      ['Part', 'Length (mm)'],
      ['=side', '0.3'],
    ]);
  });

  it('reads workbooks of writers that stream', async () => {
    const files = workbookFiles(`<row r="1">${cell('A1', 1)}${cell('B1', 2)}</row>`);
    expect(await rowsOf({ workbook: zipArchive(files, { streamed: true }) })).toEqual([['1', '2']]);
  });

  it.each([
    [
      'text with its name changed',
      Buffer.from('Part,Qty,L,W\nSide,2,600,300'),
      'The file is not an XLSX workbook',
    ],
    ['nothing', Buffer.alloc(0), 'The file is not an XLSX workbook'],
    [
      'an old or locked workbook',
      Buffer.from('d0cf11e0a1b11ae1000000', 'hex'),
      'an old XLS workbook, or one with',
    ],
    ['another archive', zipArchive({ 'content.xml': '<x/>' }), 'an archive, but not an XLSX workbook'],
    ['a locked archive', zipArchive(workbookFiles(''), { flags: 1 }), 'locked with a password'],
    [
      'a sheet that is no XML',
      zipArchive({ ...workbookFiles(''), 'xl/worksheets/sheet1.xml': '<a' }),
      'cannot be read',
    ],
    ['a sheet that is not there', zipArchive({ 'xl/workbook.xml': '<x/>' }), 'cannot be read'],
  ])('refuses %s in plain words', async (_name, workbook, message) => {
    expect(await refusalOf({ workbook })).toContain(message);
  });

  it('refuses more than 5 MB, and what unpacks to more than a list', async () => {
    expect(await refusalOf({ workbook: Buffer.alloc(5_000_001) })).toMatch(/^too large: The workbook has 5/);
    const bomb = zipArchive({ ...workbookFiles(''), 'xl/sharedStrings.xml': Buffer.alloc(90_000_000) });
    expect(bomb.length).toBeLessThan(200_000);
    expect(await refusalOf({ workbook: bomb })).toMatch(/^too large: The workbook unpacks/);
  });

  it('refuses cells so far out that the empty ones before them would fill the memory', async () => {
    expect(await refusalOf(sheet(`<row r="4294967295">${cell('A4294967295', 1)}</row>`))).toContain(
      'cannot be',
    );
    expect(await refusalOf(sheet(`<row r="1">${cell('XFD1', 1)}</row>`))).toContain('column 16384');
    expect(await refusalOf(sheet(`<row r="1048576">${cell('GR1048576', 1)}</row>`))).toContain('row 1048576');
  });

  it('does not mind a last row that is only coloured', async () => {
    const rows = `<row r="1">${cell('A1', 1)}${cell('B1', 2)}</row><row r="1048576"><c r="XFD1048576" s="0"/></row>`;
    expect(await rowsOf(sheet(rows))).toEqual([['1', '2']]);
  });

  it('answers something for every damaged workbook, and never stays silent', async () => {
    const workbook = await writeXlsxFile([[{ value: 'Part' }, { value: 'Qty' }]]).toBuffer();
    await fc.assert(
      fc.asyncProperty(fc.nat(workbook.length - 1), fc.nat(255), fc.boolean(), async (at, byte, cut) => {
        const changed = cut ? workbook.subarray(0, at) : Buffer.from(workbook);
        if (!cut) changed[at] = byte;
        const read = await readSource({ workbook: changed });
        if (read.ok) expect(read.table.rows).toEqual([['Part', 'Qty']]);
        else expect(read.refusal.message).toMatch(/\.$/);
      }),
      { numRuns: 200 },
    );
  });
});
