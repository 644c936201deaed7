import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyChanges } from '../../db/apply-changes.ts';
import type { Change } from '../../db/change.ts';
import { createProject } from '../../db/create-project.ts';
import { readUndoMenu } from '../../db/edits.repository.ts';
import { openDatabase } from '../../db/open.ts';
import { ROW_TABLES, type RowTable } from '../../db/project-rows.ts';
import { readProject } from '../../db/read-project.ts';
import { Refusal } from '../../db/refusal.ts';
import { given, type OpenProject, openProject, projectIn } from './open-project.ts';
import { smallProject } from './small-project.ts';

function refusalOf(run: () => unknown): Refusal {
  try {
    run();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('expected a Refusal');
}

function rows(project: OpenProject) {
  return readProject(project.db, project.id).rows;
}

describe('an edit', () => {
  it('changes the cells it names and answers the changed rows with the new revision', () => {
    const project = openProject();
    const [seat, leg] = project.ids('parts') as [string, string];
    const applied = project.change(
      { op: 'update', table: 'parts', id: seat, values: { width: '425', note: 'check the wall' } },
      { op: 'update', table: 'parts', id: leg, values: { quantity: '4' } },
    );
    expect(applied.revision).toBe(2);
    expect(project.revision()).toBe(2);
    expect(applied.removed).toEqual({});
    expect(applied.changed.parts?.map((row) => [row.id, row.width, row.quantity, row.note])).toEqual([
      [seat, '425 mm', '2', 'check the wall'],
      [leg, 'about 40', '4', ''],
    ]);
    expect(rows(project).parts.map((row) => row.width)).toEqual(['425 mm', 'about 40', '400 mm']);
  });

  it('stores lengths with their unit and their millimetres, and unreadable ones and expressions as typed', () => {
    const project = openProject();
    const stored = project.db
      .prepare('SELECT length, length_mm, width, width_mm FROM part ORDER BY position')
      .all();
    expect(stored).toEqual([
      { length: '1200 mm', length_mm: 1200, width: '400 mm', width_mm: 400 },
      { length: '=depth + 20', length_mm: null, width: 'about 40', width_mm: null },
      { length: '1200 mm', length_mm: 1200, width: '400 mm', width_mm: 400 },
    ]);
  });

  it('reads a length in the units that hold at its place in the request', () => {
    const project = openProject();
    const [seat] = project.ids('parts') as [string];
    project.change(
      { op: 'settings', values: { units: 'us' } },
      { op: 'update', table: 'parts', id: seat, values: { width: '16' } },
    );
    const after = rows(project).parts[0];
    expect([after?.length, after?.width]).toEqual(['1200 mm', '16"']);
  });

  it('fills in what a new row does not say, and puts it where it is told', () => {
    const project = openProject();
    const [seat, leg, shelf] = project.ids('parts') as [string, string, string];
    const applied = project.change(
      { op: 'insert', table: 'parts', tempId: 'new', before: leg, values: { name: 'Back' } },
      { op: 'insert', table: 'parts', values: { name: 'Last' } },
    );
    const id = applied.inserted.new as string;
    expect(applied.changed.parts?.[0]).toMatchObject({
      id,
      name: 'Back',
      quantity: '1',
      length: '',
      grain: 'along',
      edgeFront: 'hidden',
      showRecipeId: '',
    });
    const [, , , , last] = project.ids('parts');
    expect(project.ids('parts')).toEqual([seat, id, leg, shelf, last]);
  });

  it('lets later steps of one request use the rows of earlier ones', () => {
    const project = openProject();
    const [seat] = project.ids('parts') as [string];
    const applied = project.change(
      { op: 'insert', table: 'recipes', tempId: 'r', values: { name: 'Oil' } },
      { op: 'insert', table: 'steps', tempId: 's', values: { recipeId: 'r', productId: 'oil' } },
      { op: 'update', table: 'parts', id: seat, values: { showRecipeId: 'r' } },
      { op: 'move', table: 'recipes', id: 'r', before: project.ids('recipes')[0] ?? '' },
    );
    const after = rows(project);
    expect(after.recipes[0]?.id).toBe(applied.inserted.r);
    expect(after.steps.at(-1)).toMatchObject({ id: applied.inserted.s, recipeId: applied.inserted.r });
    expect(after.parts[0]?.showRecipeId).toBe(applied.inserted.r);
  });

  it('keeps a recipe it does not know as typed, but refuses the number of one that is not there', () => {
    const project = openProject();
    const [seat] = project.ids('parts') as [string];
    project.change({ op: 'update', table: 'parts', id: seat, values: { showRecipeId: 'danish oil' } });
    expect(rows(project).parts[0]?.showRecipeId).toBe('danish oil');
    const refusal = refusalOf(() =>
      project.change({ op: 'update', table: 'parts', id: seat, values: { showRecipeId: '991' } }),
    );
    expect(refusal).toMatchObject({ code: 'not-found', field: 'changes.0.values.showRecipeId' });
  });

  it('deletes a recipe with its steps and empties the cells that mention it', () => {
    const project = openProject();
    const [clear, paint] = project.ids('recipes') as [string, string];
    const steps = project.ids('steps');
    const applied = project.change({ op: 'delete', table: 'recipes', id: clear });
    expect(applied.removed).toEqual({ recipes: [clear], steps });
    expect(applied.changed.parts?.map((row) => row.name)).toEqual(['Seat', 'Leg']);
    const after = rows(project);
    expect(after.recipes.map((row) => row.id)).toEqual([paint]);
    expect(after.parts.map((row) => row.showRecipeId + row.backRecipeId)).toEqual(['', '', '']);
  });

  it('makes no revision when nothing is different in the end', () => {
    const project = openProject();
    const [seat] = project.ids('parts') as [string];
    const applied = project.change(
      { op: 'update', table: 'parts', id: seat, values: { width: '400' } },
      { op: 'insert', table: 'parts', tempId: 'x', values: {} },
      { op: 'delete', table: 'parts', id: 'x' },
      { op: 'move', table: 'parts', id: seat, before: project.ids('parts')[1] ?? '' },
      { op: 'settings', values: { kerfMm: 3 } },
    );
    expect(applied).toMatchObject({ revision: 1, changed: {}, removed: {} });
    expect(readUndoMenu(project.db, project.id).canUndo).toBe(false);
  });

  it('is refused whole, with nothing kept, when one step of it cannot be carried out', () => {
    const project = openProject();
    const [seat] = project.ids('parts') as [string];
    const before = project.dump();
    const refusal = refusalOf(() =>
      project.change(
        { op: 'update', table: 'parts', id: seat, values: { width: '1' } },
        { op: 'delete', table: 'blends', id: '4000' },
      ),
    );
    expect(refusal).toMatchObject({ code: 'not-found', field: 'changes.1.id' });
    expect(refusal.wayOut).not.toBe('');
    expect(project.dump()).toEqual(before);
    expect(project.revision()).toBe(1);
  });

  it('is refused when it was made on an older revision, naming the one now current', () => {
    const project = openProject();
    project.change({ op: 'settings', values: { kerfMm: 2.4 } });
    const before = project.dump();
    const stale = { revision: 1, changes: [{ op: 'settings', values: { kerfMm: 9 } }] } as const;
    const refusal = refusalOf(() => applyChanges(project.db, project.id, stale, given));
    expect(refusal).toMatchObject({ code: 'revision-stale', revision: 2 });
    expect(project.dump()).toEqual(before);
  });

  it('cannot reach into another project', () => {
    const project = openProject();
    const other = createProject(project.db, smallProject, given);
    const foreign = readProject(project.db, other).rows;
    const foreignPart = foreign.parts[0]?.id ?? '';
    const foreignRecipe = foreign.recipes[0]?.id ?? '';
    const attempts: Change[] = [
      { op: 'update', table: 'parts', id: foreignPart, values: { name: 'x' } },
      { op: 'delete', table: 'parts', id: foreignPart },
      { op: 'move', table: 'parts', id: project.ids('parts')[0] ?? '', before: foreignPart },
      { op: 'insert', table: 'steps', values: { recipeId: foreignRecipe } },
      {
        op: 'update',
        table: 'parts',
        id: project.ids('parts')[0] ?? '',
        values: { backRecipeId: foreignRecipe },
      },
    ];
    for (const attempt of attempts) expect(refusalOf(() => project.change(attempt)).code).toBe('not-found');
  });

  it('refuses a step without its recipe and a tempId used twice or that is a number', () => {
    const project = openProject();
    const twice: Change = { op: 'insert', table: 'blends', tempId: 'b', values: {} };
    expect(refusalOf(() => project.change({ op: 'insert', table: 'steps', values: {} })).field).toBe(
      'changes.0.values.recipeId',
    );
    expect(refusalOf(() => project.change(twice, twice)).field).toBe('changes.1.tempId');
    expect(refusalOf(() => project.change({ ...twice, tempId: '12' })).field).toBe('changes.0.tempId');
  });

  it('refuses a field the list does not have as a mistake of the caller', () => {
    const project = openProject();
    expect(() => project.change({ op: 'insert', table: 'blends', values: { colour: 'red' } })).toThrow(
      RangeError,
    );
  });
});

describe('the order of a list', () => {
  it('is kept through hundreds of rows put in at one spot, one by one and together', () => {
    const project = openProject();
    const expected = project.ids('sizes');
    const target = expected[0] ?? '';
    for (let round = 0; round < 130; round++) {
      const count = round % 10 === 0 ? 20 : 1;
      const changes = Array.from(
        { length: count },
        (_, index): Change => ({
          op: 'insert',
          table: 'sizes',
          tempId: `t${index}`,
          before: round % 3 === 0 ? (expected[1] ?? null) : target,
          values: { name: `s${round}.${index}`, value: '1' },
        }),
      );
      const applied = project.change(...changes);
      const at = expected.indexOf((changes[0] as { before: string | null }).before ?? '');
      expected.splice(
        at === -1 ? expected.length : at,
        0,
        ...changes.map((_, index) => applied.inserted[`t${index}`] ?? ''),
      );
      expect(project.ids('sizes')).toEqual(expected);
    }
  });

  it('follows moves to every place', () => {
    const project = openProject();
    const [seat, leg, shelf] = project.ids('parts') as [string, string, string];
    project.change({ op: 'move', table: 'parts', id: shelf, before: seat });
    expect(project.ids('parts')).toEqual([shelf, seat, leg]);
    project.change({ op: 'move', table: 'parts', id: shelf, before: null });
    expect(project.ids('parts')).toEqual([seat, leg, shelf]);
    project.change({ op: 'move', table: 'parts', id: seat, before: shelf });
    expect(project.ids('parts')).toEqual([leg, seat, shelf]);
  });
});

describe('undo and redo', () => {
  it('bring back deleted rows under their own ids, with everything that hung on them', () => {
    const project = openProject();
    const before = project.dump();
    project.change({ op: 'delete', table: 'recipes', id: project.ids('recipes')[0] ?? '' });
    project.change({ op: 'delete', table: 'blends', id: project.ids('blends')[0] ?? '' });
    const gone = project.dump();
    project.undo();
    const undone = project.undo();
    expect(project.dump()).toEqual(before);
    expect(undone.changed.parts).toHaveLength(2);
    expect(undone.changed.steps).toHaveLength(2);
    project.redo();
    project.redo();
    expect(project.dump()).toEqual(gone);
  });

  it('go on through a restart', () => {
    const project = openProject();
    const dumps = [project.dump()];
    for (const width of ['410', '420', '430']) {
      project.change({ op: 'update', table: 'parts', id: project.ids('parts')[0] ?? '', values: { width } });
      dumps.push(project.dump());
    }
    project.undo();
    project.db.close();
    const again = projectIn(openDatabase(project.path), project.path, project.id);
    expect(again.dump()).toEqual(dumps[2]);
    again.redo();
    expect(again.dump()).toEqual(dumps[3]);
    for (let step = 2; step >= 0; step--) {
      again.undo();
      expect(again.dump()).toEqual(dumps[step]);
    }
    again.db.close();
  });

  it('are refused when there is nothing to do', () => {
    const project = openProject();
    expect(refusalOf(() => project.undo()).code).toBe('nothing-to-undo');
    expect(refusalOf(() => project.redo()).code).toBe('nothing-to-redo');
  });

  it('drop what could be redone at a new edit, and keep it in the log', () => {
    const project = openProject();
    project.change({ op: 'settings', values: { kerfMm: 2 } });
    project.undo();
    project.change({ op: 'settings', values: { kerfMm: 4 } });
    expect(readUndoMenu(project.db, project.id).canRedo).toBe(false);
    expect(project.db.prepare('SELECT state FROM edit ORDER BY id').pluck().all()).toEqual([
      'dropped',
      'done',
    ]);
  });

  it('say in words what they would do', () => {
    const project = openProject();
    const [seat, leg] = project.ids('parts') as [string, string];
    const label = (...changes: Change[]): string | null => {
      project.change(...changes);
      return readUndoMenu(project.db, project.id).undoLabel;
    };
    const widths = [seat, leg].map(
      (id, index): Change => ({ op: 'update', table: 'parts', id, values: { width: `3${index}` } }),
    );
    expect(label(...widths)).toBe('change width of 2 parts');
    expect(label({ op: 'update', table: 'parts', id: seat, values: { width: '7' } })).toBe(
      'change width of part “Seat”',
    );
    expect(label({ op: 'update', table: 'parts', id: seat, values: { width: '8', grain: 'free' } })).toBe(
      'change 2 cells of part “Seat”',
    );
    expect(label({ op: 'insert', table: 'sizes', values: { name: 'ply' } })).toBe('add 1 named size');
    expect(
      label({ op: 'delete', table: 'parts', id: leg }, { op: 'insert', table: 'blends', values: {} }),
    ).toBe('delete part “Leg”, add 1 blend');
    expect(label({ op: 'settings', values: { taxPercent: null } })).toBe('change tax');
    expect(label({ op: 'move', table: 'parts', id: seat, before: null })).toBe('move part “Seat”');
    applyChanges(
      project.db,
      project.id,
      { revision: project.revision(), label: 'paste', changes: [{ op: 'settings', values: { kerfMm: 1 } }] },
      given,
    );
    expect(readUndoMenu(project.db, project.id).undoLabel).toBe('paste');
  });
});

/** One random move of a user: which list, which row, what to do with it. */
const move = fc.record({
  kind: fc.constantFrom('update', 'update', 'insert', 'delete', 'move', 'settings', 'undo', 'undo', 'redo'),
  table: fc.constantFrom<RowTable>(...ROW_TABLES),
  row: fc.nat(20),
  other: fc.nat(20),
  text: fc.oneof(fc.string({ maxLength: 12 }), fc.nat(3000).map(String)),
});
type Move = typeof move extends fc.Arbitrary<infer Value> ? Value : never;

/** The moves as a change of one to three steps, all on rows that are there. */
function changeOf(project: OpenProject, { kind, table, row, other, text }: Move): Change {
  const ids = project.ids(table);
  const id = ids[row % Math.max(ids.length, 1)];
  const before = other % 3 === 0 ? null : (ids[other % Math.max(ids.length, 1)] ?? null);
  if (kind === 'settings' || (id === undefined && kind !== 'insert'))
    return {
      op: 'settings',
      values: other % 2 === 0 ? { name: text } : { units: row % 2 === 0 ? 'us' : 'metric' },
    };
  if (kind === 'delete' && id !== undefined) return { op: 'delete', table, id };
  if (kind === 'move' && id !== undefined) return { op: 'move', table, id, before };
  const recipes = project.ids('recipes');
  const blends = project.ids('blends');
  const recipeId = recipes[other % Math.max(recipes.length, 1)] ?? '';
  const blendId = blends[other % Math.max(blends.length, 1)] ?? '';
  const orders = project.ids('orders');
  const orderId = orders[other % Math.max(orders.length, 1)] ?? '';
  const lines = project.ids('orderLines');
  const orderLineId = lines[other % Math.max(lines.length, 1)] ?? '';
  const values: Record<RowTable, Record<string, string | number | null>> = {
    parts: { name: text, length: text, radiusBackLeft: text, showRecipeId: recipeId },
    recipes: { name: text },
    steps:
      recipeId === ''
        ? {}
        : { recipeId, blendId, thinning: row / 7, sessionLossL: row % 2 === 0 ? null : 0.1 },
    blends: { name: text },
    components: blendId === '' ? {} : { blendId, parts: row + 1 / 3 },
    rules: { productId: text, rate: other % 2 === 0 ? null : row / 3 },
    extras: { name: text, unitPriceMinor: row * 100 },
    onHand: { productId: text, count: row, lengthMm: other / 3 },
    measurements: { thicknessMm: row + 0.1 },
    sizes: { name: text, value: text },
    shopHours: { weekday: row % 7, from: text, to: text },
    daysOff: { date: text },
    climateRows: { date: text, temperatureC: row / 3, humidityPercent: other % 2 === 0 ? null : row },
    pins: { taskId: text, start: text },
    doneTasks: { taskId: text, end: text, litres: other % 2 === 0 ? null : row / 7 },
    arrivals: { productId: text, date: text },
    budgets: { amountMinor: row },
    orders: { supplierId: text, deliveryMinor: row },
    orderLines: orderId === '' ? {} : { orderId, count: row, unitPriceMinor: other % 2 === 0 ? null : row },
    receipts: orderLineId === '' ? {} : { orderLineId, count: row },
    stockUses: { productId: text, amount: row / 3 },
    payments: { amountMinor: row, orderId },
    substitutes: { productId: text, substituteId: text },
    workHours: { hours: row / 4 },
    quotes: { title: text, hours: row },
  };
  if (kind === 'insert' && Object.keys(values[table]).length > 0)
    return { op: 'insert', table, before, values: values[table] };
  return id === undefined
    ? { op: 'settings', values: { name: text } }
    : { op: 'update', table, id, values: values[table] };
}

describe('over random sequences of edits, undo and redo', () => {
  it('every state comes back identical to the last column, ids included', () => {
    fc.assert(
      fc.property(fc.array(move, { minLength: 1, maxLength: 25 }), (moves) => {
        const project = openProject();
        const states = [project.dump()];
        let at = 0;
        for (const one of moves) {
          if (one.kind === 'undo') {
            if (at === 0) expect(() => project.undo()).toThrow(Refusal);
            else {
              project.undo();
              at--;
            }
          } else if (one.kind === 'redo') {
            if (at === states.length - 1) expect(() => project.redo()).toThrow(Refusal);
            else {
              project.redo();
              at++;
            }
          } else {
            const revision = project.revision();
            project.change(changeOf(project, one));
            if (project.revision() > revision) {
              states.splice(at + 1);
              states.push(project.dump());
              at++;
            }
          }
          expect(project.dump()).toEqual(states[at]);
        }
        for (; at > 0; at--) {
          project.undo();
          expect(project.dump()).toEqual(states[at - 1]);
        }
        for (; at < states.length - 1; at++) {
          project.redo();
          expect(project.dump()).toEqual(states[at + 1]);
        }
        expect(project.db.pragma('foreign_key_check')).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});
