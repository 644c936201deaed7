import request from 'supertest';
import { describe, expect, it } from 'vitest';
import { forgetDeletedProjects } from '../../db/delete-project.ts';
import { openDatabase } from '../../db/open.ts';
import type {
  ChangeAnswer,
  CuttingAnswer,
  CuttingLayout,
  PlanView,
  ProjectState,
} from '../../server/http/contract.ts';
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

describe('a plan that is being cut', () => {
  const tickAll = (path: string, app: OpenApp, { key, parts }: CuttingLayout, cut = true) =>
    app.send('post', `${path}/ticks`, {
      layout: key,
      pieces: parts.map((_, piece) => ({ sheet: 0, piece })),
      cut,
    });
  const planOf = async (app: OpenApp, id: string) =>
    ((await app.send('get', `/api/projects/${id}/plan`)).body as PlanView).materials[0];
  const project1 = async (app: OpenApp, id: string) =>
    (await app.send('get', `/api/projects/${id}`)).body as ProjectState;

  it('keeps the sheet that was begun when the list changes, and lays what comes on top beside it', async () => {
    const { app, list, path, state } = await opened();
    const layout = only(await list());
    await tickAll(path, app, layout);
    const more = { revision: state.revision, name: 'Top', quantity: '2', length: '900', width: '400' };
    await app.send('post', `/api/projects/${state.id}/parts`, { ...more, materialId: 'birch-ply-18' });
    const [first, ...rest] = (await list()).layouts;
    expect([first?.key, first?.done.length, first?.parts]).toEqual([layout.key, 6, layout.parts]);
    expect(rest.flatMap(({ parts }) => parts)).toHaveLength(2);
    // Without the ticks nothing holds the sheet, and all eight fit on one.
    await tickAll(path, app, first as CuttingLayout, false);
    expect(only(await list()).parts).toHaveLength(8);
    expect(app.db.prepare('SELECT COUNT(*) FROM begun_layout').pluck().get()).toBe(0);
  });

  it('keeps an offcut only once its sheet is cut, and only once', async () => {
    const { app, list, path, state } = await opened();
    const layout = only(await list());
    const [offcut] = layout.offcuts;
    if (offcut === undefined) throw new Error('nothing is left of the sheet');
    const { lengthMm, widthMm } = offcut;
    const keep = (revision: number, more: object = {}) =>
      app.send('post', `${path}/keep`, {
        revision,
        layout: layout.key,
        sheet: 0,
        lengthMm,
        widthMm,
        ...more,
      });
    const early = await app.refused(keep(state.revision), 409, 'not-allowed');
    expect(early.message).toContain('not there yet');
    const pieces = layout.parts.slice(1).map((_, piece) => ({ sheet: 0, piece }));
    await app.send('post', `${path}/ticks`, { layout: layout.key, pieces, cut: true });
    await app.refused(keep(state.revision), 409, 'not-allowed');
    await tickAll(path, app, layout);
    await app.refused(keep(state.revision, { sheet: 1 }), 404, 'not-found');
    await app.refused(keep(state.revision, { lengthMm: 1 }), 404, 'not-found');
    await app.refused(keep(state.revision + 1), 409, 'revision-stale');

    const { status, body } = await keep(state.revision);
    expect(status).toBe(201);
    const { revision, plan } = body as ChangeAnswer;
    const { rows, undoLabel } = await project1(app, state.id);
    expect(rows.onHand).toMatchObject([
      { productId: 'birch-ply-18', amount: 1, count: 1, lengthMm, widthMm },
    ]);
    expect(undoLabel).toContain('keep offcut');
    // The sheet it came from is still one sheet to buy, and nothing is cut from the offcut.
    expect(plan.materials[0]?.stocks).toBe(1);
    expect(plan.materials[0]?.layouts.map(({ onHandId }) => onHandId)).toEqual([null]);
    expect(only(await list()).offcuts[0]?.kept).toEqual([0]);
    const twice = await app.refused(keep(revision), 409, 'not-allowed');
    expect(twice.message).toContain('already');

    // What comes on top is cut from it.
    const more = { revision, name: 'Top', quantity: '1', length: '300', width: '200' };
    const added = await app.send('post', `/api/projects/${state.id}/parts`, {
      ...more,
      materialId: 'birch-ply-18',
    });
    const after = await planOf(app, state.id);
    expect([after?.stocks, after?.layouts.map(({ packId }) => packId === null)]).toEqual([1, [false, true]]);
    await app.refused(keep((added.body as ChangeAnswer).revision), 409, 'not-allowed');

    // Undo takes the part and the offcut back; then it can be kept again.
    const once = await app.send('post', `/api/projects/${state.id}/undo`, { revision: revision + 1 });
    const back = await app.send('post', `/api/projects/${state.id}/undo`, { revision: once.body.revision });
    expect((await project1(app, state.id)).rows.onHand).toEqual([]);
    expect((await keep((back.body as ChangeAnswer).revision)).status).toBe(201);
    expect((await project1(app, state.id)).rows.onHand).toHaveLength(1);
  });

  it('counts an offcut only while its sheet is ticked; a copy of the project has it as stock like any other', async () => {
    const { app, list, path, state } = await opened();
    const layout = only(await list());
    await tickAll(path, app, layout);
    const { lengthMm = 0, widthMm = 0 } = layout.offcuts[0] ?? {};
    const keep = { revision: state.revision, layout: layout.key, sheet: 0, lengthMm, widthMm };
    const { revision } = (await app.send('post', `${path}/keep`, keep)).body as ChangeAnswer;
    // Two more tops, each as large as the offcut: one from it, one from a second sheet.
    const top = { name: 'Top', quantity: '2', length: `${lengthMm}`, width: `${widthMm}`, grain: 'free' };
    const more = { revision, ...top, materialId: 'birch-ply-18' };
    await app.send('post', `/api/projects/${state.id}/parts`, more);
    const onHandUsed = async () =>
      (await planOf(app, state.id))?.layouts.filter(({ onHandId }) => onHandId !== null).length;
    expect(await onHandUsed()).toBe(1);
    const copy = await app.send('post', `/api/projects/${state.id}/duplicate`, { name: 'Copy' });
    expect((copy.body as ProjectState).rows.onHand).toMatchObject([{ lengthMm, widthMm, keptFrom: '' }]);
    const document = (await app.send('get', `/api/projects/${state.id}/document`)).body as {
      onHand: object[];
    };
    expect(document.onHand).toMatchObject([{ lengthMm, widthMm }]);
    expect(document.onHand[0]).not.toHaveProperty('keptFrom');

    const now = (await list()).layouts.find(({ key }) => key === layout.key) as CuttingLayout;
    await tickAll(path, app, now, false);
    expect(await onHandUsed()).toBe(0);
    expect((await project1(app, state.id)).rows.onHand).toHaveLength(1);
    // The other copy of the project is as it was.
    expect((await planOf(app, copy.body.id))?.layouts.some(({ onHandId }) => onHandId !== null)).toBe(true);
  });

  it('plans anew when other sheets are begun, and comes to the same plan', async () => {
    const { app, list, path, state } = await opened();
    const layout = only(await list());
    const versionOf = async () => (await app.send('get', `${path}/search`)).body.planVersion as number;
    const before = await versionOf();
    await tickAll(path, app, layout);
    const begun = await versionOf();
    expect(begun).toBeGreaterThan(before);
    // The same tick again changes nothing.
    await tickAll(path, app, layout);
    expect(await versionOf()).toBe(begun);
    expect((await planOf(app, state.id))?.layouts).toEqual(state.plan.materials[0]?.layouts);
  });
});
