import { describe, expect, it } from 'vitest';
import type { Change, ChangeAnswer, ProjectState } from '../../server/http/contract.ts';
import { fetchRaw } from './fetch-raw.ts';
import { openApp } from './open-app.ts';

async function opened() {
  const app = openApp();
  const state = await app.importSmall();
  const path = `/api/projects/${state.id}`;
  return {
    app,
    state,
    path,
    post: (revision: number, ...changes: unknown[]) =>
      app.send('post', `${path}/changes`, { revision, changes }),
    read: async () => (await app.send('get', path)).body as ProjectState,
  };
}

describe('a change of many rows', () => {
  it('is stored whole and answered with what is different', async () => {
    const { state, post, read } = await opened();
    const [seat, leg, shelf] = state.rows.parts.map((part) => part.id);
    const answer = await post(
      1,
      { op: 'update', table: 'parts', id: seat, values: { width: '45 cm' } },
      { op: 'delete', table: 'parts', id: shelf },
      { op: 'insert', table: 'parts', tempId: 'new', before: leg, values: { name: 'Back' } },
      { op: 'settings', values: { taxPercent: null } },
    );
    expect(answer.status).toBe(200);
    const { changed, removed, inserted, plan, ...rest } = answer.body as ChangeAnswer;
    expect(rest).toMatchObject({
      revision: 2,
      removedPartPlans: [shelf],
      canUndo: true,
      canRedo: false,
      undoLabel: 'change width of part “Seat”, delete part “Shelf”, add 1 part, change tax',
    });
    expect(rest.settings.taxPercent).toBe(null);
    expect(removed).toEqual({ parts: [shelf] });
    expect(changed.parts?.map((part) => [part.id, part.name, part.width])).toEqual([
      [seat, 'Seat', '45 cm'],
      [inserted.new, 'Back', ''],
    ]);
    expect(plan.parts.map((part) => part.id)).toEqual([seat, inserted.new]);

    const after = await read();
    expect(after.revision).toBe(2);
    expect(after.rows.parts.map((part) => part.id)).toEqual([seat, inserted.new, leg]);
    const merged = new Map(state.plan.parts.map((part) => [part.id, part]));
    for (const id of rest.removedPartPlans) merged.delete(id);
    for (const part of plan.parts) merged.set(part.id, part);
    expect(after.plan.parts).toEqual(after.rows.parts.map((row) => merged.get(row.id)));
    expect({ ...after.plan, parts: [] }).toEqual({ ...plan, parts: [] });
  });

  it('is refused as stale when the project has moved on, and nothing of either edit is lost', async () => {
    const { app, state, path, post, read } = await opened();
    const id = state.rows.parts[0]?.id;
    await post(1, { op: 'update', table: 'parts', id, values: { width: '500' } });
    const current = await read();
    const stale = post(1, { op: 'update', table: 'parts', id, values: { width: '700' } });
    const error = await app.refused(stale, 409, 'revision-stale');
    expect(error).toMatchObject({ field: 'revision', revision: 2 });
    expect(await read()).toEqual(current);
    const again = await post(error.revision ?? 0, {
      op: 'update',
      table: 'parts',
      id,
      values: { width: '700' },
    });
    expect(again.status).toBe(200);
    expect((await app.send('post', `${path}/undo`, { revision: 3 })).body.changed.parts[0].width).toBe(
      '500 mm',
    );
  });

  it('sent by several at the same time is taken from one and refused to the others', async () => {
    const { state, post, read } = await opened();
    const id = state.rows.parts[0]?.id;
    const answers = await Promise.all(
      ['410', '420', '430', '440'].map((width) =>
        post(1, { op: 'update', table: 'parts', id, values: { width } }),
      ),
    );
    expect(answers.map((answer) => answer.status).toSorted()).toEqual([200, 409, 409, 409]);
    const winner = answers.find((answer) => answer.status === 200)?.body as ChangeAnswer;
    expect((await read()).rows.parts[0]).toEqual(winner.changed.parts?.[0]);
  });

  it('names every value it cannot take, and takes none of the others', async () => {
    const { app, state, post, read } = await opened();
    const [step] = state.rows.steps;
    const error = await app.refused(
      post(
        1,
        { op: 'update', table: 'parts', id: state.rows.parts[0]?.id, values: { width: '500' } },
        { op: 'update', table: 'steps', id: step?.id, values: { coats: '3' } },
        { op: 'update', table: 'steps', id: step?.id, values: { coats: 2.5, thinning: -1 } },
        { op: 'insert', table: 'parts', values: { lenght: '600' } },
        { op: 'update', table: 'parts', id: state.rows.parts[0]?.id, values: { grain: 'sideways' } },
      ),
      400,
      'bad-request',
    );
    expect(error.faults).toEqual([
      { field: 'changes.1.values.coats', message: 'Coats must be a number, not “3”.' },
      { field: 'changes.2.values.coats', message: 'Coats must be a whole number, not 2.5.' },
      { field: 'changes.2.values.thinning', message: 'Thinning must be at least 0, not -1.' },
      { field: 'changes.3.values.lenght', message: '“lenght” is not known here.' },
      {
        field: 'changes.4.values.grain',
        message: 'Grain must be “along” or “across” or “free”, not “sideways”.',
      },
    ]);
    expect(await read()).toEqual(state);
  });

  it.each([
    ['an unknown operation', { op: 'explode', table: 'parts', id: '1' }, 'changes.0.op'],
    ['an unknown list', { op: 'insert', table: 'users', values: {} }, 'changes.0.table'],
    ['a list of another kind', { op: 'delete', table: 'constructor', id: '1' }, 'changes.0.table'],
    ['a number as id', { op: 'delete', table: 'parts', id: 1 }, 'changes.0.id'],
    ['values that are no object', { op: 'insert', table: 'parts', values: 'x' }, 'changes.0.values'],
    ['an unknown setting', { op: 'settings', values: { revision: 7 } }, 'changes.0.values.revision'],
    [
      'a banding order with a repeated edge',
      { op: 'settings', values: { bandingOrder: ['left', 'left', 'back', 'front'] } },
      'changes.0.values.bandingOrder',
    ],
    ['an empty name', { op: 'settings', values: { name: ' ' } }, 'changes.0.values.name'],
    [
      'null in a text cell',
      { op: 'insert', table: 'parts', values: { name: null } },
      'changes.0.values.name',
    ],
    ['a row that is not there', { op: 'delete', table: 'parts', id: '987654' }, 'changes.0.id'],
    [
      'a part as recipe',
      { op: 'insert', table: 'steps', values: { recipeId: '987654' } },
      'changes.0.values.recipeId',
    ],
  ])('is refused for %s', async (_what, change, field) => {
    const { state, post, read } = await opened();
    const answer = await post(1, change);
    expect([400, 404]).toContain(answer.status);
    expect(answer.body.error.field).toBe(field);
    expect(await read()).toEqual(state);
  });

  it('is refused without changes, with too many, and with more than the request may hold', async () => {
    const { app, path, post } = await opened();
    await app.refused(post(1), 400, 'bad-request');
    const add: Change = { op: 'insert', table: 'parts', values: {} };
    const many = await app.refused(post(1, ...Array(20_001).fill(add)), 413, 'too-large');
    expect(many.message).toBe('Changes has 20001 entries; at most 20000 can be taken at once.');
    const huge = { revision: 1, label: 'x'.repeat(9 * 1024 * 1024), changes: [add] };
    await app.refused(app.send('post', `${path}/changes`, huge), 413, 'too-large');
  });

  it('keeps 10,000 pasted characters in a cell and refuses more, naming the cell', async () => {
    const { app, state, post, read } = await opened();
    const id = state.rows.parts[0]?.id;
    const pasted = `start ${'½"×,\n\t漢'.repeat(1600)}`.padEnd(10_000, 'x').slice(0, 10_000);
    expect(
      (await post(1, { op: 'update', table: 'parts', id, values: { length: pasted, note: pasted } })).status,
    ).toBe(200);
    const after = await read();
    expect([after.rows.parts[0]?.length, after.rows.parts[0]?.note]).toEqual([pasted, pasted]);
    const longer = await app.refused(
      post(2, { op: 'update', table: 'parts', id, values: { note: `${pasted}!` } }),
      413,
      'too-large',
    );
    expect(longer.field).toBe('changes.0.values.note');
    expect(longer.message).toContain('10001 characters');
    expect((await read()).rows.parts[0]?.note).toBe(pasted);
  });

  it('refuses numbers that are none: NaN, 1e999 and texts', async () => {
    const { app, state, path, read } = await opened();
    const id = state.rows.measurements[0]?.id;
    const raw = (value: string) =>
      fetchRaw(app.express, `${path}/measurements/${id}`, `{"revision":1,"thicknessMm":${value}}`);
    expect((await raw('1e999')).body.error).toMatchObject({ code: 'bad-request', field: 'thicknessMm' });
    expect((await raw('NaN')).body.error.code).toBe('bad-request');
    expect((await raw('"18 mm"')).body.error.field).toBe('thicknessMm');
    expect((await raw('-0')).body.error.field).toBe('thicknessMm');
    expect(await read()).toEqual(state);
  });

  it('takes a key that names a prototype for the unknown field it is', async () => {
    const { app, state, path, read } = await opened();
    const body = '{"revision":1,"changes":[{"op":"settings","values":{"__proto__":{"kerfMm":9}}}]}';
    const answer = await fetchRaw(app.express, `${path}/changes`, body, 'post');
    expect(answer.status).toBe(400);
    expect(await read()).toEqual(state);
  });

  it('stores a paste of 1,000 rows by 8 columns in under a second, plan included, as one undo step', async () => {
    const { app, state, path, post, read } = await opened();
    const paste = Array.from(
      { length: 1000 },
      (_, index): Change => ({
        op: 'insert',
        table: 'parts',
        values: {
          name: `Panel ${index}`,
          section: `Cabinet ${index % 40}`,
          quantity: String(1 + (index % 4)),
          length: `${300 + (index % 500)}`,
          width: `${200 + (index % 300)} mm`,
          materialId: 'birch-ply-18',
          edgeFront: 'birch-veneer-22',
          showRecipeId: state.rows.recipes[0]?.id ?? '',
        },
      }),
    );
    // Processor time of sender and server together, so that what else the machine does is not counted.
    const start = process.cpuUsage();
    const answer = await post(1, ...paste);
    const { user, system } = process.cpuUsage(start);
    const spentMs = (user + system) / 1000;
    expect(answer.status).toBe(200);
    expect((answer.body as ChangeAnswer).changed.parts).toHaveLength(1000);
    expect(spentMs).toBeLessThan(1000);
    // The layouts stay here until somebody looks at them.
    const { layoutsLeftOut, plan } = answer.body as ChangeAnswer;
    const layouts = ({ materials }: ChangeAnswer['plan']) => materials.map((one) => one.layouts.length);
    const whole = await read();
    expect([layoutsLeftOut, layouts(plan)]).toEqual([true, layouts(whole.plan).map(() => 0)]);
    expect(layouts(whole.plan).every((count) => count > 0)).toBe(true);
    expect(whole.rows.parts).toHaveLength(1003);
    const undone = (await app.send('post', `${path}/undo`, { revision: 2 })).body as ChangeAnswer;
    expect(undone.removed.parts).toHaveLength(1000);
    expect(undone.removedPartPlans).toHaveLength(1000);
    expect([undone.layoutsLeftOut, layouts(undone.plan)]).toEqual([false, layouts((await read()).plan)]);
  });
});
