import { describe, expect, it } from 'vitest';
import { listBackups } from '../../db/backup.ts';
import type { ProjectState } from '../../server/http/contract.ts';
import { openApp } from './open-app.ts';
import { document } from './small-document.ts';

describe('projects', () => {
  it('begin with sensible settings and working hours, no other rows and nothing to undo', async () => {
    const app = openApp();
    const answer = await app.send('post', '/api/projects', {
      name: ' Oak desk ',
      units: 'us',
      currency: 'USD',
    });
    expect(answer.status).toBe(201);
    const state = answer.body as ProjectState;
    expect(state.settings).toMatchObject({ name: 'Oak desk', units: 'us', currency: 'USD', overhangMm: 25 });
    expect(state).toMatchObject({ revision: 1, canUndo: false, canRedo: false, undoLabel: null });
    const { shopHours, ...rows } = state.rows;
    expect(Object.values(rows).flat()).toEqual([]);
    expect(shopHours).toHaveLength(7);
    expect((await app.send('get', `/api/projects/${state.id}`)).body).toEqual(state);
    const { projects } = (await app.send('get', '/api/projects')).body as { projects: { id: string }[] };
    expect(projects.at(-1)).toMatchObject({ id: state.id, name: 'Oak desk', revision: 1 });
  });

  it('are refused with a name, unit or currency that cannot be', async () => {
    const app = openApp();
    const begin = (body: object) => app.refused(app.send('post', '/api/projects', body), 400, 'bad-request');
    expect((await begin({ name: '  ', units: 'us', currency: 'USD' })).field).toBe('name');
    expect((await begin({ name: 'x', units: 'cubits', currency: 'USD' })).field).toBe('units');
    expect((await begin({ name: 'x', units: 'us', currency: 'dollar' })).field).toBe('currency');
    expect((await begin({ name: 'x', units: 'us', currency: 'USD', colour: 'red' })).field).toBe('colour');
    expect((await begin({ name: 'x', units: 'us' })).message).toBe('Currency is missing.');
  });

  it('come in from a document and go out as one that plans the same', async () => {
    const app = openApp();
    const state = await app.importSmall();
    expect(state.rows.parts.map((part) => part.length)).toEqual(['1200 mm', '=depth + 20 mm', '1200 mm']);
    const written = (await app.send('get', `/api/projects/${state.id}/document`)).body as object;
    expect(written).not.toHaveProperty('products');
    const again = (await app.send('post', '/api/projects/import', written)).body as ProjectState;
    expect(again.id).not.toBe(state.id);
    const unnumbered = (text: string): string =>
      text.replace(
        /"(id|orderId|orderLineId|recipeId|blendId|stepId|showRecipeId|backRecipeId)":"\d*(-\d)?"/g,
        '"$1":""',
      );
    expect(unnumbered(JSON.stringify(again.rows))).toBe(unnumbered(JSON.stringify(state.rows)));
    expect(again.plan.totals).toEqual(state.plan.totals);
  });

  it('are refused whole from a document with faults, each located', async () => {
    const app = openApp();
    const before = (await app.send('get', '/api/projects')).body as object;
    const faulty = {
      ...document,
      parts: [
        { name: 'x', width: true },
        { name: 'y', colour: 'red' },
      ],
    };
    const error = await app.refused(app.send('post', '/api/projects/import', faulty), 400, 'bad-request');
    expect(error.faults?.map((fault) => fault.field)).toEqual(['parts.0.width', 'parts.1.colour']);
    const twice = { ...document, parts: [{ id: 'a' }, { id: 'a' }] };
    await app.refused(app.send('post', '/api/projects/import', twice), 400, 'bad-request');
    expect((await app.send('get', '/api/projects')).body).toEqual(before);
  });

  it('keep a mention of a recipe that the document does not have, without meeting a recipe of the database', async () => {
    const app = openApp();
    const taken = await app.importSmall();
    const recipeId = taken.rows.recipes[0]?.id ?? '';
    const state = (
      await app.send('post', '/api/projects/import', {
        ...document,
        parts: [
          { name: 'a', showRecipeId: recipeId },
          { name: 'b', showRecipeId: 'no such finish' },
        ],
        recipes: [],
      })
    ).body as ProjectState;
    expect(state.rows.parts.map((part) => part.showRecipeId)).toEqual([`#${recipeId}`, 'no such finish']);
  });

  it('are copied with their rows under a new name, and the copy lives its own life', async () => {
    const app = openApp();
    const state = await app.importSmall();
    const answer = await app.send('post', `/api/projects/${state.id}/duplicate`, { name: 'Second bench' });
    const copy = answer.body as ProjectState;
    expect(copy.settings).toEqual({ ...state.settings, name: 'Second bench' });
    expect(copy.rows.steps.map((step) => step.recipeId)).toEqual([
      copy.rows.recipes[0]?.id,
      copy.rows.recipes[0]?.id,
    ]);
    await app.send('patch', `/api/projects/${copy.id}/settings`, { revision: 1, kerfMm: 1 });
    expect((await app.send('get', `/api/projects/${state.id}`)).body).toEqual(state);
    await app.refused(app.send('post', '/api/projects/9999/duplicate', { name: 'x' }), 404, 'not-found');
  });

  it('are deleted after a backup, and only at the revision last seen', async () => {
    const app = openApp();
    const state = await app.importSmall();
    const path = `/api/projects/${state.id}`;
    const stale = await app.refused(app.send('delete', path, { revision: 0 }), 409, 'revision-stale');
    expect(stale.revision).toBe(1);
    expect((await app.send('delete', path, { revision: 1 })).status).toBe(204);
    await app.refused(app.send('get', path), 404, 'not-found');
    await app.refused(app.send('delete', path, { revision: 1 }), 404, 'not-found');
    expect(listBackups(app.db.name).filter((file) => file.includes('before-delete'))).toHaveLength(1);
  });

  it('come back as they were when deleted, undo included, until 30 days have passed', async () => {
    const clock = { now: new Date('2026-03-01T12:00:00Z') };
    const app = openApp({ now: () => clock.now });
    const first = await app.importSmall();
    const path = `/api/projects/${first.id}`;
    await app.send('patch', `${path}/settings`, { revision: 1, kerfMm: 1 });
    const state = (await app.send('get', path)).body as ProjectState;
    const listed = async (): Promise<string[]> =>
      ((await app.send('get', '/api/projects')).body as { projects: { id: string }[] }).projects.map(
        ({ id }) => id,
      );
    const deleted = async () =>
      ((await app.send('get', '/api/projects/deleted')).body as { projects: object[] }).projects;
    const before = await listed();
    await app.send('delete', path, { revision: 2 });
    expect(await listed()).toEqual(before.filter((id) => id !== first.id));
    expect(await deleted()).toEqual([
      { id: first.id, name: first.settings.name, deletedAt: '2026-03-01T12:00:00.000Z' },
    ]);
    await app.refused(app.send('post', `${path}/undo`, { revision: 2 }), 404, 'not-found');
    await app.refused(app.send('patch', `${path}/settings`, { revision: 2, kerfMm: 3 }), 404, 'not-found');
    expect((await app.send('post', `${path}/bring-back`)).body).toEqual(state);
    expect(await listed()).toEqual(before);
    expect(await deleted()).toEqual([]);
    await app.refused(app.send('post', `${path}/bring-back`), 404, 'not-found');
    const undone = await app.send('post', `${path}/undo`, { revision: 2 });
    expect(undone.body).toMatchObject({ settings: { kerfMm: first.settings.kerfMm } });

    // Thirty days are kept; the next deletion after that lets go.
    await app.send('delete', path, { revision: 3 });
    clock.now = new Date('2026-03-31T12:00:00Z');
    const second = await app.importSmall();
    await app.send('delete', `/api/projects/${second.id}`, { revision: 1 });
    expect(await deleted()).toHaveLength(2);
    clock.now = new Date('2026-03-31T12:00:01Z');
    const third = await app.importSmall();
    await app.send('delete', `/api/projects/${third.id}`, { revision: 1 });
    expect(await deleted()).toHaveLength(2);
    await app.refused(app.send('post', `${path}/bring-back`), 404, 'not-found');
  });

  it('are not found under what is no id', async () => {
    const app = openApp();
    for (const id of ['0', '1e3', '-1', 'x', '99999999999999999999', "1'--", '%00'])
      await app.refused(app.send('get', `/api/projects/${id}`), 404, 'not-found');
  });
});

describe('a document that brings products along', () => {
  const own = {
    id: 'shop-ply-12',
    kind: 'sheet',
    name: 'Shop ply 12 mm',
    shortName: 'shop 12',
    unit: 'pcs',
    choices: {},
    figures: {},
    recoat: [],
    recoatEvidence: null,
    packs: [],
    retired: false,
    origin: 'user',
    note: null,
  };
  const withOwn = (product: object) => ({
    ...document,
    products: [product],
    parts: [{ name: 'x', materialId: 'shop-ply-12', edgeFront: 'shop-ply-12' }],
  });

  it('adds the ones the catalogue does not have, once, and takes them along again', async () => {
    const app = openApp();
    const first = (await app.send('post', '/api/projects/import', withOwn(own))).body as ProjectState;
    expect(first.rows.parts[0]?.materialId).toBe('shop-ply-12');
    const second = (await app.send('post', '/api/projects/import', withOwn({ ...own, note: null })))
      .body as ProjectState;
    expect(second.rows.parts[0]?.materialId).toBe('shop-ply-12');
    const written = (await app.send('get', `/api/projects/${first.id}/document`)).body as {
      products: object[];
    };
    expect(written.products).toEqual([own]);
  });

  it('puts one beside a product with the same id that says something else', async () => {
    const app = openApp();
    await app.send('post', '/api/projects/import', withOwn(own));
    const other = withOwn({ ...own, name: 'Another ply' });
    for (const _time of [1, 2]) {
      const state = (await app.send('post', '/api/projects/import', other)).body as ProjectState;
      expect(state.rows.parts[0]).toMatchObject({ materialId: 'shop-ply-12-2', edgeFront: 'shop-ply-12-2' });
    }
    const { products } = (await app.send('get', '/api/catalogue')).body as { products: (typeof own)[] };
    expect(
      products.filter(({ id }) => id.startsWith('shop-ply')).map(({ name, shortName }) => [name, shortName]),
    ).toEqual([
      ['Shop ply 12 mm', 'shop 12'],
      ['Another ply', 'shop 12 2'],
    ]);
  });
});
