import { describe, expect, it } from 'vitest';
import writeXlsxFile from 'write-excel-file/node';
import type { ChangeAnswer, ImportPreview, ProjectState } from '../../server/http/contract.ts';
import { type OpenApp, openApp } from './open-app.ts';

const LIST = 'Part;Qty;Length;Depth\nSide;2;600,5;300\nTop;;700;21 13/1\n';

async function preview(app: OpenApp, id: string, body: object): Promise<ImportPreview> {
  const answer = await app.send('post', `/api/projects/${id}/import/preview`, body);
  expect(answer.status).toBe(200);
  return answer.body as ImportPreview;
}

describe('previewing an import', () => {
  it('answers how the list was split, what its columns are, what to ask, and each row with its doubts', async () => {
    const app = openApp();
    const { id } = await app.importSmall();
    const read = await preview(app, id, { text: LIST });
    expect(read.split).toBe(';');
    expect(read.headingRow).toBe(0);
    expect(read.columns.map(({ field }) => field)).toEqual(['name', 'quantity', 'length', 'width']);
    expect(read.questions.map(({ kind }) => kind)).toEqual(['axis', 'unit', 'material', 'finish']);
    expect(read.rows.map(({ length, width }) => [length.text, width.state])).toEqual([
      ['600.5 mm', 'read'],
      ['700 mm', 'refused'],
    ]);
    expect(read.counts.rows).toEqual({ read: 1, doubt: 0, refused: 1, empty: 0 });
  });

  it('reads a workbook sent as base64', async () => {
    const app = openApp();
    const { id } = await app.importSmall();
    const workbook = await writeXlsxFile([
      ['Part', 'Qty', 'Length (mm)', 'Width (mm)'].map((value) => ({ value })),
      [{ value: 'Side' }, { value: 2 }, { value: 600.25 }, { value: 300 }],
    ]).toBuffer();
    const read = await preview(app, id, { workbookBase64: workbook.toString('base64') });
    expect(read.split).toBe('sheet');
    expect(read.rows[0]?.length).toEqual({ text: '600.25 mm', state: 'read', reason: null });
  });

  it('reads plain numbers in the unit of the project, and takes the answers given', async () => {
    const app = openApp();
    const begun = await app.send('post', '/api/projects', { name: 'Inch', units: 'us', currency: 'USD' });
    const { id } = begun.body as ProjectState;
    const text = 'Part,Qty,Size\nSide,2,12 x 30';
    expect((await preview(app, id, { text })).rows[0]?.length.text).toBe('12"');
    const answered = await preview(app, id, {
      text,
      bareUnit: 'cm',
      sizeOrder: 'width-length',
      materialId: 'birch-ply-18',
    });
    expect(answered.rows[0]).toMatchObject({
      length: { text: '30 cm' },
      width: { text: '12 cm' },
      material: { text: 'birch-ply-18' },
    });
  });

  it('stores nothing; adding the rows is one change and one step of undo', async () => {
    const app = openApp();
    const before = await app.importSmall();
    const { id } = before;
    const { rows } = await preview(app, id, { text: LIST, materialId: 'birch-ply-18' });
    expect((await app.send('get', `/api/projects/${id}`)).body).toEqual(before);
    const added = await app.send('post', `/api/projects/${id}/changes`, {
      revision: 1,
      label: 'import 2 parts',
      changes: rows.map(({ name, length, width, material }) => ({
        op: 'insert',
        table: 'parts',
        values: { name: name.text, length: length.text, width: width.text, materialId: material.text },
      })),
    });
    const answer = added.body as ChangeAnswer;
    expect(answer.undoLabel).toBe('import 2 parts');
    expect(answer.changed.parts?.map(({ width }) => width)).toEqual(['300 mm', '21 13/1']);
    await app.send('post', `/api/projects/${id}/undo`, { revision: answer.revision });
    const after = (await app.send('get', `/api/projects/${id}`)).body as ProjectState;
    expect(after.rows).toEqual(before.rows);
  });

  it.each([
    [{}, 400, 'bad-request', 'either a text or a workbook'],
    [{ text: 'x', workbookBase64: 'UEs=' }, 400, 'bad-request', 'either a text or a workbook'],
    [{ text: '' }, 400, 'bad-request', 'The list is empty.'],
    [{ text: 7 }, 400, 'bad-request', 'must be a text'],
    [{ text: LIST, colour: 'red' }, 400, 'bad-request', 'not known here'],
    [{ text: LIST, headingRow: 40 }, 400, 'bad-request', 'row 41 cannot hold the headings'],
    [{ text: LIST, headingRow: -1 }, 400, 'bad-request', 'at least 0'],
    [{ text: LIST, bareUnit: 'yard' }, 400, 'bad-request', 'must be'],
    [{ text: LIST, columns: [] }, 400, 'bad-request', '4 columns, but 0'],
    [{ text: 'a'.repeat(2_000_001) }, 413, 'too-large', 'at most 2 MB'],
    [{ text: 'a\n'.repeat(20_002) }, 413, 'too-large', 'at most 20000'],
    [{ workbookBase64: 'not base64!' }, 400, 'bad-request', 'must be base64'],
    [
      { workbookBase64: Buffer.from('Part;Qty').toString('base64') },
      400,
      'bad-request',
      'not an XLSX workbook',
    ],
    [{ workbookBase64: 'A'.repeat(6_666_672) }, 413, 'too-large', 'characters'],
  ] as const)('refuses a request that cannot be read: %#', async (body, status, code, words) => {
    const app = openApp();
    const { id } = await app.importSmall();
    const error = await app.refused(
      app.send('post', `/api/projects/${id}/import/preview`, body),
      status,
      code,
    );
    expect(error.message).toContain(words);
  });

  it('finds no project that is not there', async () => {
    const app = openApp();
    await app.refused(
      app.send('post', '/api/projects/4711/import/preview', { text: LIST }),
      404,
      'not-found',
    );
  });
});
