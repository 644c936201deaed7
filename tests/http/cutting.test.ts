import request from 'supertest';
import { describe, expect, it } from 'vitest';
import { forgetDeletedProjects } from '../../db/delete-project.ts';
import { openDatabase } from '../../db/open.ts';
import type { CuttingAnswer, CuttingLayout, ProjectState } from '../../server/http/contract.ts';
import { createApp } from '../../server/http/create-app.ts';
import { type OpenApp, openApp } from './open-app.ts';

/** Two shelves and four slats from one sheet. */
const project = {
  format: 'plywright-project',
  version: 1,
  settings: { name: 'Shelves', units: 'metric', currency: 'EUR' },
  parts: [
    { id: 'shelf', name: 'Shelf', quantity: '2', length: '800', width: '300', materialId: 'birch-ply-18' },
    { id: 'slat', name: 'Slat', quantity: '4', length: '600', width: '60', materialId: 'birch-ply-18' },
  ],
};

async function opened(): Promise<{
  app: OpenApp;
  state: ProjectState;
  path: string;
  list: () => Promise<CuttingAnswer>;
}> {
  const app = openApp();
  const { status, body } = await app.send('post', '/api/projects/import', project);
  expect(status).toBe(201);
  const state = body as ProjectState;
  const path = `/api/projects/${state.id}/cutting`;
  return { app, state, path, list: async () => (await app.send('get', path)).body as CuttingAnswer };
}

function only(answer: CuttingAnswer): CuttingLayout {
  expect(answer.layouts).toHaveLength(1);
  return answer.layouts[0] as CuttingLayout;
}

describe('the cutting list', () => {
  it('names every piece and the cuts in their order', async () => {
    const { list, state } = await opened();
    const answer = await list();
    const layout = only(answer);
    expect(answer.revision).toBe(state.revision);
    // Two shelves and four slats are six pieces.
    expect(layout.parts).toHaveLength(6);
    expect(layout.cuts.map(({ number }) => number)).toEqual(layout.cuts.map((_, index) => index + 1));
    const freed = layout.cuts.flatMap(({ frees }) => frees.filter(({ type }) => type === 'part'));
    expect(freed).toHaveLength(6);
    expect(answer.elsewhere).toBe(0);
  });

  it('keeps ticks, without an edit and without undo', async () => {
    const { app, list, path, state } = await opened();
    const { key } = only(await list());
    const pieces = [
      { sheet: 0, piece: 1 },
      { sheet: 0, piece: 3 },
    ];
    const { body } = await app.send('post', `${path}/ticks`, { layout: key, pieces, cut: true });
    expect(only(body as CuttingAnswer).done).toEqual(pieces);
    // Ticking once more changes nothing; taking one off leaves the other.
    await app.send('post', `${path}/ticks`, { layout: key, pieces, cut: true });
    await app.send('post', `${path}/ticks`, { layout: key, pieces: pieces.slice(1), cut: false });
    expect(only(await list()).done).toEqual(pieces.slice(0, 1));
    const after = (await app.send('get', `/api/projects/${state.id}`)).body as ProjectState;
    expect([after.revision, after.undoLabel]).toEqual([state.revision, state.undoLabel]);
  });

  it('shows no tick on a changed plan, and the old ones again when it changes back', async () => {
    const { app, list, path, state } = await opened();
    const { key } = only(await list());
    const pieces = [{ sheet: 0, piece: 0 }];
    await app.send('post', `${path}/ticks`, { layout: key, pieces, cut: true });
    const shelf = state.rows.parts[0]?.id;
    const changed = await app.send('patch', `/api/projects/${state.id}/parts/${shelf}`, {
      revision: state.revision,
      length: '750',
    });
    const other = await list();
    expect(only(other).key).not.toBe(key);
    expect(only(other).done).toEqual([]);
    expect(other.elsewhere).toBe(1);
    await app.refused(
      app.send('post', `${path}/ticks`, { layout: key, pieces, cut: true }),
      404,
      'not-found',
    );
    await app.send('post', `/api/projects/${state.id}/undo`, { revision: changed.body.revision });
    expect(only(await list())).toMatchObject({ key, done: pieces });
  });

  it('refuses a piece or a sheet that the layout does not have, and a project that is not there', async () => {
    const { app, list, path } = await opened();
    const { key } = only(await list());
    for (const place of [
      { sheet: 1, piece: 0 },
      { sheet: 0, piece: 6 },
    ]) {
      const body = { layout: key, pieces: [place], cut: true };
      const { wayOut } = await app.refused(app.send('post', `${path}/ticks`, body), 404, 'not-found');
      expect(wayOut).toContain('cutting plan');
    }
    const below = { layout: key, pieces: [{ sheet: 0, piece: -1 }], cut: true };
    await app.refused(app.send('post', `${path}/ticks`, below), 400, 'bad-request');
    await app.refused(app.send('get', '/api/projects/999999/cutting'), 404, 'not-found');
    expect(only(await list()).done).toEqual([]);
  });

  it('has its ticks after a restart, and lets them go with the project', async () => {
    const { app, list, path, state } = await opened();
    const { key } = only(await list());
    const pieces = [{ sheet: 0, piece: 2 }];
    await app.send('post', `${path}/ticks`, { layout: key, pieces, cut: true });
    const again = openDatabase(app.db.name);
    const second = createApp(again, {
      clientFolder: null,
      allowedHosts: [],
      passphrase: null,
      log: { info() {}, error() {} } as never,
    });
    const { body } = await request(second.express).get(path);
    expect(only(body as CuttingAnswer).done).toEqual(pieces);
    second.close();
    again.close();
    await app.send('delete', `/api/projects/${state.id}`, { revision: state.revision });
    // A deleted project is kept for 30 days, with all that is its own.
    forgetDeletedProjects(app.db, new Date(Date.now() + 31 * 24 * 60 * 60 * 1000));
    expect(app.db.prepare('SELECT COUNT(*) FROM cut_piece').pluck().get()).toBe(0);
  });
});
