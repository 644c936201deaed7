import { describe, expect, it } from 'vitest';
import {
  type ChangeAnswer,
  type ProjectState,
  ROW_TABLES,
  type RowTable,
} from '../../server/http/contract.ts';
import { openApp } from './open-app.ts';

async function opened() {
  const app = openApp();
  const state = await app.importSmall();
  const path = `/api/projects/${state.id}`;
  return { app, state, path, read: async () => (await app.send('get', path)).body as ProjectState };
}

/** For each list: fields of a new row, fields to change, and a change that cannot be. */
const examples = (
  state: ProjectState,
): Record<RowTable, [object, Record<string, unknown>, object, string]> => ({
  parts: [{ name: 'Top', width: '3-1/2"' }, { name: 'Lid', quantity: '' }, { shape: 'oval' }, 'shape'],
  recipes: [{ name: 'Oil' }, { faces: 'points' }, { faces: 'both' }, 'faces'],
  steps: [
    { recipeId: state.rows.recipes[0]?.id, kind: 'seal' },
    { thinning: 0.1, sessionLossL: null, transferEfficiency: 0.65, method: 'spray-hvlp' },
    { transferEfficiency: 1.5 },
    'transferEfficiency',
  ],
  blends: [{ name: 'Grey' }, { name: 'Grey 2' }, { name: 7 }, 'name'],
  components: [{ blendId: state.rows.blends[0]?.id }, { parts: 0.25 }, { parts: 'two' }, 'parts'],
  rules: [{ productId: 'glue' }, { rate: 0.15 }, { per: 'cupboard' }, 'per'],
  extras: [
    { name: 'Screws', quantity: 200 },
    { unitPriceMinor: 4 },
    { unitPriceMinor: 3.5 },
    'unitPriceMinor',
  ],
  onHand: [
    { productId: 'birch-ply-18', lengthMm: 900, widthMm: 300.5 },
    { count: 2 },
    { count: 1.5 },
    'count',
  ],
  measurements: [
    { productId: 'x', thicknessMm: 17.8 },
    { thicknessMm: 18.1 },
    { thicknessMm: 0 },
    'thicknessMm',
  ],
  sizes: [{ name: 'ply', value: '18' }, { value: '=depth' }, { value: 18 }, 'value'],
  shopHours: [{ weekday: 4, from: '8:00', to: '12:00' }, { from: '9 am' }, { weekday: 7 }, 'weekday'],
  daysOff: [{ date: '2027-12-25', note: 'holiday' }, { date: 'Christmas' }, { date: 20271225 }, 'date'],
  climateRows: [
    { date: '2027-01-02', time: '06:00', temperatureC: -4.5, humidityPercent: 80 },
    { humidityPercent: null },
    { temperatureC: 'cold' },
    'temperatureC',
  ],
  pins: [{ taskId: 'a#1:show:1-1', start: '2027-01-02T09:00' }, { start: 'noon' }, { start: 9 }, 'start'],
  doneTasks: [
    { taskId: 'a#1:show:1-1', start: '2027-01-02T09:00', end: '2027-01-02T09:40' },
    { litres: 0.35 },
    { litres: -1 },
    'litres',
  ],
  arrivals: [{ productId: 'oil-poly-satin', date: '2027-01-02' }, { date: '' }, { date: null }, 'date'],
  budgets: [
    { category: 'finish', amountMinor: 12000 },
    { amountMinor: 0 },
    { amountMinor: -1 },
    'amountMinor',
  ],
  orders: [
    { supplierId: 'finish-counter', date: '2027-01-02' },
    { deliveryMinor: 590, taxPercent: 20 },
    { date: '2027-02-29' },
    'date',
  ],
  orderLines: [
    { orderId: state.rows.orders[0]?.id, name: 'Satin', count: 2 },
    { unitPriceMinor: 1899, invoicedPriceMinor: null },
    { unitPriceMinor: 1_000_000_000_001 },
    'unitPriceMinor',
  ],
  receipts: [
    { orderLineId: state.rows.orderLines[0]?.id, date: '2027-01-05', count: 1 },
    { kind: 'returned', batch: '7' },
    { count: -1 },
    'count',
  ],
  stockUses: [{ productId: 'oil-poly-satin', amount: 0.2 }, { note: 'spilled' }, { amount: -0.1 }, 'amount'],
  payments: [
    { amountMinor: 2000, date: '2027-01-05' },
    { share: 0.5, kind: 'refund' },
    { amountMinor: 12.34 },
    'amountMinor',
  ],
  substitutes: [
    { productId: 'a', substituteId: 'b' },
    { substituteId: 'c' },
    { substituteId: 7 },
    'substituteId',
  ],
  workHours: [{ hours: 1.5, date: '2027-01-05' }, { note: 'sanding' }, { hours: -2 }, 'hours'],
  quotes: [{ title: 'Seat', markupPercent: 15 }, { hours: 12.5 }, { markupPercent: 1001 }, 'markupPercent'],
});

describe.each(ROW_TABLES)('the rows of %s', (table) => {
  it('are added, changed and deleted one by one', async () => {
    const { state, path, app, read } = await opened();
    const [added, changed] = examples(state)[table];
    const first = state.rows[table][0]?.id;
    const post = await app.send('post', `${path}/${table}`, { revision: 1, before: first, ...added });
    const { changed: rows, revision } = post.body as ChangeAnswer;
    const [row] = rows[table] ?? [];
    expect(revision).toBe(2);
    expect((await read()).rows[table][0]).toEqual(row);

    const patch = await app.send('patch', `${path}/${table}/${row?.id}`, { revision: 2, ...changed });
    expect((patch.body as ChangeAnswer).changed[table]?.[0]).toEqual({ ...row, ...changed });
    expect((await read()).rows[table][0]).toEqual({ ...row, ...changed });

    const gone = await app.send('delete', `${path}/${table}/${row?.id}`, { revision: 3 });
    expect((gone.body as ChangeAnswer).removed[table]).toEqual([row?.id]);
    expect((await read()).rows).toEqual(state.rows);
    await app.refused(app.send('patch', `${path}/${table}/${row?.id}`, { revision: 4 }), 404, 'not-found');
  });

  it('are refused with a value that cannot be, an unknown field, a stale revision or none', async () => {
    const { state, path, app, read } = await opened();
    const [, , wrong, field] = examples(state)[table];
    const one = `${path}/${table}/${state.rows[table][0]?.id}`;
    expect(
      (await app.refused(app.send('patch', one, { revision: 1, ...wrong }), 400, 'bad-request')).field,
    ).toBe(field);
    expect(
      (await app.refused(app.send('patch', one, { revision: 1, id: '5' }), 400, 'bad-request')).field,
    ).toBe('id');
    expect(
      (await app.refused(app.send('patch', one, { revision: 1, position: 5 }), 400, 'bad-request')).field,
    ).toBe('position');
    expect((await app.refused(app.send('delete', one), 400, 'bad-request')).message).toBe(
      'The request is missing.',
    );
    expect((await app.refused(app.send('delete', one, {}), 400, 'bad-request')).field).toBe('revision');
    expect(
      (await app.refused(app.send('delete', one, { revision: 0 }), 409, 'revision-stale')).revision,
    ).toBe(1);
    expect(
      (await app.refused(app.send('delete', `${path}/${table}/77777`, { revision: 1 }), 404, 'not-found'))
        .field,
    ).toBe('rowId');
    expect(await read()).toEqual(state);
  });
});

describe('a row', () => {
  it('located in its own request when a row it refers to is not there', async () => {
    const { path, app } = await opened();
    const step = app.send('post', `${path}/steps`, { revision: 1, recipeId: '777' });
    expect((await app.refused(step, 404, 'not-found')).field).toBe('recipeId');
    const without = app.send('post', `${path}/steps`, { revision: 1 });
    expect((await app.refused(without, 400, 'bad-request')).field).toBe('recipeId');
    const front = app.send('post', `${path}/parts`, { revision: 1, before: '777' });
    expect((await app.refused(front, 404, 'not-found')).field).toBe('before');
  });

  it('deleted while in use takes along what belongs to it, and undo brings all of it back', async () => {
    const { state, path, app, read } = await opened();
    const recipe = state.rows.recipes[0]?.id;
    const answer = (await app.send('delete', `${path}/recipes/${recipe}`, { revision: 1 }))
      .body as ChangeAnswer;
    expect(answer.removed.steps).toHaveLength(2);
    expect(answer.changed.parts).toHaveLength(2);
    expect(answer.undoLabel).toBe('delete finish recipe “Clear satin”');
    await app.send('post', `${path}/undo`, { revision: 2 });
    expect((await read()).rows).toEqual(state.rows);
    expect((await read()).plan).toEqual(state.plan);
  });
});

describe('the settings', () => {
  it('change without changing what a typed size means', async () => {
    const { state, path, app } = await opened();
    const answer = await app.send('patch', `${path}/settings`, {
      revision: 1,
      units: 'us',
      inchDenominator: 16,
    });
    const { settings, plan, undoLabel } = answer.body as ChangeAnswer;
    expect(settings).toEqual({ ...state.settings, units: 'us', inchDenominator: 16 });
    expect(undoLabel).toBe('change 2 settings');
    expect(plan.parts.map((part) => part.id)).not.toContain(state.rows.parts[0]?.id);
  });

  it.each([
    [{ kerfMm: -1 }, 'kerfMm'],
    [{ spareStrips: 1.5 }, 'spareStrips'],
    [{ inchDenominator: 5 }, 'inchDenominator'],
    [{ bandingOrder: ['left', 'right'] }, 'bandingOrder'],
    [{ taxPercent: '20' }, 'taxPercent'],
    [{ currency: 'eur' }, 'currency'],
    [{ finishLoss: 1 }, 'finishLoss'],
  ])('are refused as %j', async (values, field) => {
    const { state, path, app, read } = await opened();
    const error = await app.refused(
      app.send('patch', `${path}/settings`, { revision: 1, ...values }),
      400,
      'bad-request',
    );
    expect(error.field).toBe(field);
    expect(await read()).toEqual(state);
  });
});

describe('undo and redo', () => {
  it('go back and forth, and are refused at either end', async () => {
    const { state, path, app, read } = await opened();
    await app.refused(app.send('post', `${path}/undo`, { revision: 1 }), 409, 'nothing-to-undo');
    await app.send('patch', `${path}/settings`, { revision: 1, kerfMm: 2 });
    const changed = await read();
    const undone = (await app.send('post', `${path}/undo`, { revision: 2 })).body as ChangeAnswer;
    expect(undone).toMatchObject({ revision: 3, canUndo: false, canRedo: true, redoLabel: 'change kerf' });
    expect({ ...(await read()), revision: 1, canRedo: false, redoLabel: null }).toEqual(state);
    await app.refused(app.send('post', `${path}/redo`, { revision: 2 }), 409, 'revision-stale');
    await app.send('post', `${path}/redo`, { revision: 3 });
    expect({ ...(await read()), revision: 2 }).toEqual(changed);
    await app.refused(app.send('post', `${path}/redo`, { revision: 4 }), 409, 'nothing-to-redo');
  });
});
