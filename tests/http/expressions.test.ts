import { describe, expect, it } from 'vitest';
import type { ChangeAnswer, ProjectState } from '../../server/http/contract.ts';
import { openApp } from './open-app.ts';

/** A chair of two named sizes; the seat uses them in every kind of cell. */
const chair = {
  format: 'plywright-project',
  version: 1,
  settings: { name: 'Chair', units: 'metric', currency: 'EUR' },
  sizes: [
    { id: 'depth', name: 'depth', value: '450' },
    { id: 'ply', name: 'ply', value: '18' },
    { id: 'rail', name: 'rail', value: '=depth - 2*PLY - 4' },
  ],
  parts: [
    {
      id: 'seat',
      name: 'Seat',
      quantity: '=floor(depth/(10*ply))',
      length: '= depth - 36',
      width: '=2*100',
      radiusFrontLeft: '=ply/2 + 1',
      materialId: 'birch-ply-18',
    },
    { id: 'plain', name: 'Plain', quantity: '1', length: '600', width: '300', materialId: 'birch-ply-18' },
  ],
} as const;

async function opened() {
  const app = openApp();
  const answer = await app.send('post', '/api/projects/import', chair);
  expect(answer.status).toBe(201);
  const state = answer.body as ProjectState;
  const path = `/api/projects/${state.id}`;
  const read = async () => (await app.send('get', path)).body as ProjectState;
  const change = async (revision: number, ...changes: readonly object[]) =>
    (await app.send('post', `${path}/changes`, { revision, changes })).body as ChangeAnswer;
  const sizeId = (name: string) => state.rows.sizes.find((size) => size.name === name)?.id ?? '';
  const seatId = state.rows.parts[0]?.id ?? '';
  return { app, state, path, read, change, sizeId, seatId };
}

/** What a plan says of lengths, to a nanometre: a quotient of inches may differ from one of millimetres in the last bits. */
function lengths({ plan }: Pick<ProjectState, 'plan'>) {
  const mm = (value: number | null) => (value === null ? null : Math.round(value * 1e6) / 1e6);
  return {
    sizes: plan.sizes.map(({ valueMm }) => mm(valueMm)),
    parts: plan.parts.map(({ lengthMm, widthMm, cornersMm }) => [lengthMm, widthMm, ...cornersMm].map(mm)),
    quantities: plan.parts.map(({ quantity }) => quantity),
  };
}

describe('calculations', () => {
  it('are stored with the units of their lengths and keep their millimetres when the units are switched', async () => {
    const { app, state, path, read } = await opened();
    expect(state.rows.sizes.map(({ value }) => value)).toEqual(['450 mm', '18 mm', '=depth - 2*PLY - 4 mm']);
    expect(state.rows.parts[0]).toMatchObject({
      quantity: '=floor(depth/(10*ply))', // plain numbers: nothing to say
      length: '= depth - 36 mm',
      width: '=2*100 mm',
      radiusFrontLeft: '=ply/2 + 1 mm',
    });
    // 450 - 36 = 414; 2 x 100; 18/2 + 1 = 10; 450 - 36 - 4 = 410; 450/180 = 2.5, so 2 pieces.
    expect(lengths(state)).toMatchObject({
      sizes: [450, 18, 410],
      parts: [
        [414, 200, 10, 0, 0, 0],
        [600, 300, 0, 0, 0, 0],
      ],
      quantities: [2, 1],
    });
    await app.send('patch', `${path}/settings`, { revision: 1, units: 'us' });
    const switched = await read();
    expect(lengths(switched)).toEqual(lengths(state));
    expect(switched.rows.parts).toEqual(state.rows.parts);
  });

  it('take the units that hold at their place in the request', async () => {
    const { change, read, seatId } = await opened();
    await change(
      1,
      { op: 'update', table: 'parts', id: seatId, values: { length: '=depth - 1' } },
      { op: 'settings', values: { units: 'us' } },
      { op: 'update', table: 'parts', id: seatId, values: { width: '=depth - 1 1/2' } },
    );
    const { rows, plan } = await read();
    expect(rows.parts[0]).toMatchObject({ length: '=depth - 1 mm', width: '=depth - 1 1/2"' });
    expect(plan.parts[0]?.lengthMm).toBe(449);
    expect(plan.parts[0]?.widthMm).toBeCloseTo(411.9, 9); // 450 - 1.5 x 25.4
  });

  it('that cannot be read are kept as typed', async () => {
    const { change, read, seatId } = await opened();
    await change(1, { op: 'update', table: 'parts', id: seatId, values: { length: '=depth - 10-1/2' } });
    expect((await read()).rows.parts[0]?.length).toBe('=depth - 10-1/2');
  });

  it('stored bare by an earlier version are given their units before these are switched', async () => {
    const { app, path, read, seatId, state } = await opened();
    app.db.prepare("UPDATE part SET length = '=depth - 36' WHERE id = ?").run(seatId);
    const { body } = await app.send('patch', `${path}/settings`, { revision: 1, units: 'us' });
    expect((body as ChangeAnswer).changed.parts?.[0]?.length).toBe('=depth - 36 mm');
    expect(lengths(await read())).toEqual(lengths(state));
    await app.send('post', `${path}/undo`, { revision: 2 });
    expect((await read()).rows.parts[0]?.length).toBe('=depth - 36');
  });
});

describe('a named size', () => {
  it('is renamed in every cell that uses it, whatever its capitals, in one undo step', async () => {
    const { app, state, path, read, sizeId } = await opened();
    const answer = await app.send('patch', `${path}/sizes/${sizeId('ply')}`, { revision: 1, name: 'board' });
    const { undoLabel, revision, plan } = answer.body as ChangeAnswer;
    expect([undoLabel, revision]).toEqual(['rename named size “ply” to “board” in 3 calculations', 2]);
    expect(plan.problems).toEqual(state.plan.problems);
    const renamed = await read();
    expect(renamed.rows.sizes.map(({ name, value }) => `${name} ${value}`)).toEqual([
      'depth 450 mm',
      'board 18 mm',
      'rail =depth - 2*board - 4 mm',
    ]);
    expect(renamed.rows.parts[0]).toMatchObject({
      quantity: '=floor(depth/(10*board))',
      length: '= depth - 36 mm',
      radiusFrontLeft: '=board/2 + 1 mm',
    });
    expect(lengths(renamed)).toEqual(lengths(state));
    await app.send('post', `${path}/undo`, { revision: 2 });
    expect((await read()).rows).toEqual(state.rows);
    await app.send('post', `${path}/redo`, { revision: 3 });
    expect((await read()).rows).toEqual(renamed.rows);
  });

  it('can be spelled with other capitals', async () => {
    const { app, path, read, sizeId } = await opened();
    await app.send('patch', `${path}/sizes/${sizeId('ply')}`, { revision: 1, name: 'PLY' });
    expect((await read()).rows.sizes.map(({ name }) => name)).toEqual(['depth', 'PLY', 'rail']);
  });

  it('is not given a name that is taken or cannot be one, and nothing is written', async () => {
    const { app, state, path, read, sizeId } = await opened();
    const one = `${path}/sizes/${sizeId('ply')}`;
    const named = (name: string) => app.send('patch', one, { revision: 1, name });
    const taken = await app.refused(named('DEPTH'), 409, 'name-taken');
    expect([taken.field, taken.message]).toEqual(['name', 'There is a size named «depth» already.']);
    for (const name of ['', 'seat depth', '2ply', 'mm', 'Max', 'ply-back', 'ply*2'])
      expect((await app.refused(named(name), 400, 'bad-request')).field).toBe('name');
    const changes = [
      { op: 'settings', values: { kerfMm: 4 } },
      { op: 'update', table: 'sizes', id: sizeId('ply'), values: { name: 'rail' } },
    ];
    const batch = await app.refused(
      app.send('post', `${path}/changes`, { revision: 1, changes }),
      409,
      'name-taken',
    );
    expect(batch.field).toBe('changes.1.values.name');
    const long = await app.refused(named('p'.repeat(500)), 400, 'bad-request');
    expect([long.field, long.wayOut]).toEqual(['name', expect.stringContaining('shorter')]);
    expect(await read()).toEqual(state);
  });

  it('can be deleted while it is used: each cell that used it says so', async () => {
    const { app, path, read, sizeId, seatId } = await opened();
    await app.send('delete', `${path}/sizes/${sizeId('ply')}`, { revision: 1 });
    const { plan, rows } = await read();
    const unknown = plan.problems.filter(({ code }) => code === 'expression-unknown-name');
    expect(unknown.map(({ at }) => `${at.table}/${at.id}/${at.field}`)).toEqual([
      `sizes/${sizeId('rail')}/value`,
      `parts/${seatId}/quantity`,
      `parts/${seatId}/radiusFrontLeft`,
    ]);
    for (const { message, wayOut } of unknown) {
      expect(message).toMatch(/There is no size named «ply»/i);
      expect(wayOut).toContain('depth');
    }
    expect(plan.parts[0]?.lengthMm).toBe(414);
    expect(rows.parts[0]?.radiusFrontLeft).toBe('=ply/2 + 1 mm');
  });
});
