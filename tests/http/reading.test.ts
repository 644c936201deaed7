import { describe, expect, it } from 'vitest';
import type { ChangeAnswer, ProjectState, ReadingAnswer } from '../../server/http/contract.ts';
import { openApp } from './open-app.ts';

/** Two sizes with values, one that hangs on another, one that cannot be read and one that waits for it. */
const sizes = [
  { id: 'depth', name: 'depth', value: '450' },
  { id: 'ply', name: 'ply', value: '18' },
  { id: 'rail', name: 'rail', value: '=depth - 2*ply' },
  { id: 'broken', name: 'broken', value: 'about so' },
  { id: 'hangs', name: 'hangs', value: '=broken + ply' },
];

async function opened(units: 'metric' | 'us' = 'metric') {
  const app = openApp();
  const document = {
    format: 'plywright-project',
    version: 1,
    settings: { name: 'Chair', units, currency: 'EUR', inchDenominator: 8 },
    sizes: units === 'metric' ? sizes : [{ id: 'depth', name: 'depth', value: '450 mm' }],
    parts: [],
  };
  const state = (await app.send('post', '/api/projects/import', document)).body as ProjectState;
  const path = `/api/projects/${state.id}`;
  const id = (name: string) => state.rows.sizes.find((size) => size.name === name)?.id ?? '';
  const read = async (field: string, text: string, sizeId?: string) =>
    (await app.send('post', `${path}/reading`, { field, text, ...(sizeId === undefined ? {} : { sizeId }) }))
      .body as ReadingAnswer;
  return { app, state, path, id, read };
}

describe('the reading of a cell', () => {
  it('says what a length comes to, as the project prints it and in full', async () => {
    const { read } = await opened();
    expect(await read('length', '600')).toEqual({
      ok: true,
      mm: 600,
      quantity: null,
      display: { project: '600 mm', exact: null },
      names: [],
    });
    // 23.625 in x 25.4 = 600.075 mm.
    expect(await read('width', '23 5/8"')).toMatchObject({
      mm: 600.075,
      display: { project: '600.1 mm', exact: '600.075 mm' },
    });
    const us = await opened('us');
    expect(await us.read('length', '=depth - 1 1/2')).toMatchObject({
      mm: 411.9, // 450 - 38.1
      display: { project: '≈16 1/4"', exact: '411.9 mm' },
    });
  });

  it('names the sizes a calculation uses, with their values, each once', async () => {
    const { read, id } = await opened();
    expect(await read('length', '=depth - 2*PLY - ply')).toMatchObject({
      mm: 396, // 450 - 36 - 18
      names: [
        { name: 'depth', id: id('depth'), mm: 450 },
        { name: 'PLY', id: id('ply'), mm: 18 },
      ],
    });
  });

  it('counts pieces, and takes no radius for a square corner', async () => {
    const { read } = await opened();
    expect(await read('quantity', '=floor(depth/(10*ply))')).toMatchObject({
      quantity: 2, // 450 / 180
      mm: null,
      display: { project: '2 pieces', exact: null },
    });
    expect(await read('quantity', 'x1')).toMatchObject({ quantity: 1, display: { project: '1 piece' } });
    expect(await read('radius', '')).toMatchObject({ ok: true, mm: 0 });
    expect(await read('radius', '0')).toMatchObject({ ok: true, mm: 0 });
    expect(await read('length', '0')).toMatchObject({ ok: false, code: 'dimension-not-positive' });
    expect(await read('size', '0')).toMatchObject({ ok: true, mm: 0 });
  });

  it('says what is wrong and what to do, as the plan would', async () => {
    const { read } = await opened();
    expect(await read('length', '=shelf - 2')).toEqual({
      ok: false,
      code: 'expression-unknown-name',
      message: 'There is no size named «shelf».',
      wayOut: expect.stringContaining('depth'),
      names: [{ name: 'shelf', id: null, mm: null }],
    });
    expect(await read('length', '21 13/1')).toMatchObject({
      ok: false,
      code: 'dimension-truncated',
      names: [],
    });
    expect(await read('length', '')).toMatchObject({ ok: false, code: 'dimension-missing' });
    expect(await read('quantity', '2.5')).toMatchObject({ ok: false, code: 'quantity-not-whole' });
    expect(await read('length', '=hangs + 1')).toMatchObject({
      ok: false,
      code: null,
      message: 'It waits for hangs, which has no value.',
    });
  });

  it('works a named size out in its place, so that one which would use itself is told', async () => {
    const { read, id } = await opened();
    expect(await read('size', '=rail + 2', id('depth'))).toMatchObject({
      ok: false,
      code: 'expression-cycle',
      message: expect.stringContaining('depth uses rail uses depth'),
    });
    expect(await read('size', '=rail + 2', id('ply'))).toMatchObject({ code: 'expression-cycle' });
    expect(await read('size', '=depth + 2', id('rail'))).toMatchObject({ ok: true, mm: 452 });
    expect(await read('size', '20', id('broken'))).toMatchObject({ ok: true, mm: 20 });
    // Without a row, or one that is gone: a size that would be new.
    expect(await read('size', '=rail + 2')).toMatchObject({ ok: true, mm: 416 });
    expect(await read('size', '=rail + 2', '999999')).toMatchObject({ ok: true, mm: 416 });
  });

  it('is what the plan says once the cell is left so', async () => {
    const { app, path, read } = await opened();
    const added = await app.send('post', `${path}/parts`, { revision: 1, materialId: 'birch-ply-18' });
    const part = (added.body as ChangeAnswer).changed.parts?.[0]?.id ?? '';
    const texts = [
      '600',
      '23⅝"',
      '=depth',
      '=2*36',
      '=hangs',
      '=rail +',
      '2 m',
      '21 13/1',
      '=ply/depth',
      '-4',
      '=',
    ];
    let revision = 2;
    for (const text of texts) {
      const reading = await read('length', text);
      const answer = await app.send('patch', `${path}/parts/${part}`, { revision, length: text });
      revision = (answer.body as ChangeAnswer).revision;
      const { plan } = (await app.send('get', path)).body as ProjectState;
      const problem = plan.problems.find(({ at }) => at.id === part && at.field === 'length');
      const told = reading.ok ? [reading.mm, undefined] : [null, reading.code ?? undefined];
      expect([text, plan.parts[0]?.lengthMm, problem?.code]).toEqual([text, ...told]);
      if (!reading.ok && problem !== undefined) expect(reading.message).toBe(problem.message);
    }
  });

  it('stores nothing', async () => {
    const { app, path, state, read } = await opened();
    await read('length', '=depth');
    expect((await app.send('get', path)).body).toEqual(state);
  });

  it('is refused for a field that is none, a text too long and a project that is not there', async () => {
    const { app, path } = await opened();
    const ask = (body: object) => app.send('post', `${path}/reading`, body);
    expect((await app.refused(ask({ field: 'note', text: 'x' }), 400, 'bad-request')).field).toBe('field');
    expect((await app.refused(ask({ field: 'length' }), 400, 'bad-request')).field).toBe('text');
    await app.refused(ask({ field: 'length', text: '1'.repeat(10_001) }), 413, 'too-large');
    await app.refused(ask({ field: 'size', text: '1', sizeId: 'x' }), 400, 'bad-request');
    const gone = app.send('post', '/api/projects/999999/reading', { field: 'length', text: '1' });
    await app.refused(gone, 404, 'not-found');
  });
});
