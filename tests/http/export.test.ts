import readXlsxFile from 'read-excel-file/node';
import request from 'supertest';
import { describe, expect, it } from 'vitest';
import { EXPORT_TABLES } from '../../server/exchange/export/export-table.ts';
import type { ProjectState } from '../../server/http/contract.ts';
import { type OpenApp, openApp } from './open-app.ts';

/** The bytes of a file as a browser saves it. */
async function download(app: OpenApp, path: string): Promise<{ name: string; type: string; bytes: Buffer }> {
  const answer = await request(app.express)
    .get(path)
    .buffer(true)
    .parse((response, done) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () => done(null, Buffer.concat(chunks)));
    });
  expect(answer.status).toBe(200);
  const disposition = answer.headers['content-disposition'] ?? '';
  const encoded = /filename\*=UTF-8''([^;]+)/.exec(disposition)?.[1];
  const name =
    encoded === undefined ? /filename="([^"]+)"/.exec(disposition)?.[1] : decodeURIComponent(encoded);
  return { name: name ?? '', type: answer.headers['content-type'] ?? '', bytes: answer.body as Buffer };
}

describe('exporting tables', () => {
  it('sends every table in both formats, named after the project and the table', async () => {
    const app = openApp();
    const { id, settings } = await app.importSmall();
    for (const table of EXPORT_TABLES) {
      const csv = await download(app, `/api/projects/${id}/export/${table}.csv`);
      expect(csv.name).toBe(`${settings.name} - ${table.replaceAll('-', ' ')}.csv`);
      expect(csv.type).toBe('text/csv; charset=utf-8');
      const lines = csv.bytes.toString('utf8').split('\r\n');
      const workbook = await download(app, `/api/projects/${id}/export/${table}.xlsx`);
      expect(workbook.name).toBe(`${settings.name} - ${table.replaceAll('-', ' ')}.xlsx`);
      const [sheet] = await readXlsxFile(workbook.bytes);
      expect(lines[0]?.split(',')[0]).toBe(`\uFEFF${sheet?.data[0]?.[0]}`);
    }
  });

  it('sends all tables as one workbook, the part list first', async () => {
    const app = openApp();
    const { id, rows } = await app.importSmall();
    const { name, type, bytes } = await download(app, `/api/projects/${id}/export/project.xlsx`);
    expect(name).toMatch(/\.xlsx$/);
    expect(type).toContain('spreadsheetml.sheet');
    const sheets = await readXlsxFile(bytes);
    expect(sheets).toHaveLength(EXPORT_TABLES.length);
    expect(sheets[0]?.data.slice(1).map((row) => row[0])).toEqual(rows.parts.map((part) => part.name));
  });

  it('follows every edit, and keeps what a spreadsheet would run from being run', async () => {
    const app = openApp();
    const { id, rows } = await app.importSmall();
    const path = `/api/projects/${id}`;
    const [first] = rows.parts;
    await app.send('patch', `${path}/parts/${first?.id}`, { revision: 1, name: '=1+1', length: '777' });
    const { bytes } = await download(app, `${path}/export/parts.csv`);
    expect(bytes.toString('utf8')).toMatch(/\r\n'=1\+1,[^,]*,\d+,777,/);
  });

  it('sends the project document under the name of the project, as JSON that can be read back', async () => {
    const app = openApp();
    const state = await app.importSmall();
    const { name, type, bytes } = await download(app, `/api/projects/${state.id}/document`);
    expect(name).toBe(`${state.settings.name}.plywright.json`);
    expect(type).toContain('application/json');
    const again = await app.send('post', '/api/projects/import', JSON.parse(bytes.toString('utf8')));
    expect((again.body as ProjectState).plan.totals).toEqual(state.plan.totals);
  });

  it('names files in any script', async () => {
    const app = openApp();
    const { id } = await app.importSmall();
    await app.send('patch', `/api/projects/${id}/settings`, { revision: 1, name: 'Bücher: 棚/1' });
    const { name } = await download(app, `/api/projects/${id}/export/buy-list.csv`);
    expect(name).toBe('Bücher 棚 1 - buy list.csv');
  });

  it('finds no table, format or project that is not there', async () => {
    const app = openApp();
    const { id } = await app.importSmall();
    for (const file of [
      'secrets.csv',
      'parts.pdf',
      'parts',
      'project.csv',
      '..%2f..%2fparts.csv',
      'parts.csv.csv',
    ])
      expect((await app.send('get', `/api/projects/${id}/export/${file}`)).status).toBe(404);
    await app.refused(app.send('get', '/api/projects/4711/export/parts.csv'), 404, 'not-found');
    await app.refused(app.send('get', '/api/projects/4711/export/project.xlsx'), 404, 'not-found');
    await app.refused(app.send('get', `/api/projects/${id}/export/parts.csv?x=1`), 400, 'bad-request');
  });
});
