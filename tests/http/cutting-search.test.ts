import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import type {
  ChangeAnswer,
  CuttingLayout,
  CuttingSearchAnswer,
  MaterialSearch,
  PlanView,
  ProjectState,
} from '../../server/http/contract.ts';
import { freshFile } from '../db/fresh-file.ts';
import {
  broken,
  costAndOffcut,
  imported,
  isBetter,
  isOver,
  isRunning,
  listening,
  only,
  SHORT,
} from './cutting-listening.ts';
import { eventWindow } from './event-window.ts';
import { easyCutting, hardCutting } from './hard-cutting.ts';

describe('a window on a project whose cutting can be better', () => {
  it('hears a better plan without a new revision, and reads layouts that can be cut', async () => {
    const { app, window } = await listening({ ...SHORT, mostSteps: 120 });
    const state = await imported(app, hardCutting(2));
    const before = costAndOffcut(state.plan);
    const first = await window(state.id);
    const better = await first.until<CuttingSearchAnswer>('cutting', ({ planVersion }) => planVersion > 0);
    expect(better.revision).toBe(state.revision);
    await first.until('cutting', isOver);

    const plan = (await app.send('get', `/api/projects/${state.id}/plan`)).body as PlanView;
    expect(isBetter(costAndOffcut(plan), before)).toBe(true);
    expect(broken(state, plan)).toEqual([]);
    const after = (await app.send('get', `/api/projects/${state.id}`)).body as ProjectState;
    expect([after.revision, after.undoLabel, after.rows]).toEqual([
      state.revision,
      state.undoLabel,
      state.rows,
    ]);
    const told = only((await app.send('get', `/api/projects/${state.id}/cutting/search`)).body);
    const [material] = plan.materials;
    expect([told.stocks, told.costMinor, told.boundStocks]).toEqual([
      material?.stocks,
      material?.costMinor,
      material?.boundStocks,
    ]);
    expect(told.boundCostMinor).toBeLessThanOrEqual(told.costMinor ?? 0);
    // The buy list follows the plan.
    const line = plan.buy.lines.find(({ productId }) => productId === 'birch-ply-18');
    expect(line?.cost).toBe(material?.costMinor);
  });

  it('has its edits answered while the search goes on', async () => {
    const { app, window, send } = await listening({ ...SHORT, searchMs: 60_000 });
    const state = await imported(app, hardCutting());
    const first = await window(state.id);
    await first.until('cutting', isRunning);
    let { revision } = state;
    // A note changes no question, so that the same search is still on; it would hold up any of these for a minute.
    for (let edit = 0; edit < 8; edit++) {
      const begun = performance.now();
      const part = `/api/projects/${state.id}/parts/${state.rows.parts[0]?.id}`;
      const { status, body } = await send('PATCH', part, { revision, note: `${revision}` });
      expect([status, performance.now() - begun < 10_000]).toEqual([200, true]);
      revision = (body as ChangeAnswer).revision;
    }
    const told = only((await send('GET', `/api/projects/${state.id}/cutting/search`)).body);
    expect(told.state).toBe('running');
  });

  it('sees a search given up when its question is edited away, and one begun for the new question', async () => {
    const { app, window, send } = await listening({ ...SHORT, searchMs: 20_000 });
    const state = await imported(app, hardCutting());
    const first = await window(state.id);
    const { since } = only(await first.until<CuttingSearchAnswer>('cutting', isRunning));
    const part = state.rows.parts[0]?.id;
    const { body } = await send('PATCH', `/api/projects/${state.id}/parts/${part}`, {
      revision: state.revision,
      width: '231',
    });
    const { revision } = body as ChangeAnswer;
    const again = await first.until<CuttingSearchAnswer>(
      'cutting',
      (data) => data.revision === revision && only(data).state === 'running' && only(data).since !== since,
    );
    expect(only(again).searchedMs).toBe(0);
    // Both questions have a row of their own: nothing found for the first was used for the second.
    const questions = app.db.prepare('SELECT COUNT(*) FROM cutting_answer').pluck();
    await expect.poll(() => questions.get(), { timeout: 5000 }).toBeGreaterThanOrEqual(1);
  });

  it('is not searched for while nobody looks', async () => {
    const { app } = await listening();
    const state = await imported(app, hardCutting());
    await new Promise((resolve) => setTimeout(resolve, 300));
    const told = only((await app.send('get', `/api/projects/${state.id}/cutting/search`)).body);
    expect([told.state, told.searchedMs, told.advice]).toEqual(['idle', 0, null]);
  });
});

describe('searching when asked', () => {
  it('goes on from where it was, and stops when told, long before its time is over', async () => {
    // Asked for, a search takes six times as long: a minute.
    const { app } = await listening({ ...SHORT, searchMs: 10_000 });
    const state = await imported(app, hardCutting(1));
    const path = `/api/projects/${state.id}/cutting`;
    const read = async (): Promise<MaterialSearch> => only((await app.send('get', `${path}/search`)).body);
    const searchAndStop = async (): Promise<MaterialSearch> => {
      const begun = await app.send('post', `${path}/search`, { materialId: 'birch-ply-18' });
      expect([begun.status, only(begun.body).state, only(begun.body).budgetMs]).toEqual([
        202,
        'running',
        60_000,
      ]);
      await new Promise((resolve) => setTimeout(resolve, 300));
      const { body } = await app.send('post', `${path}/stop`);
      expect(['idle', 'running']).toContain(only(body).state);
      await expect.poll(async () => (await read()).state, { timeout: 20_000 }).toBe('idle');
      return read();
    };
    const once = await searchAndStop();
    expect(once.searchedMs).toBeGreaterThan(0);
    const cost = costAndOffcut((await app.send('get', `/api/projects/${state.id}/plan`)).body);
    const twice = await searchAndStop();
    expect(twice.searchedMs).toBeGreaterThan(once.searchedMs);
    expect(twice.searchedMs).toBeLessThan(once.searchedMs + 50_000);
    const after = costAndOffcut((await app.send('get', `/api/projects/${state.id}/plan`)).body);
    expect(isBetter(cost, after)).toBe(false);
  });

  it('is refused for a product that nothing is cut from, and for a project that is not there', async () => {
    const { app } = await listening();
    const { id } = await imported(app, hardCutting());
    const path = `/api/projects/${id}/cutting/search`;
    const { message } = await app.refused(app.send('post', path, { materialId: 'pine' }), 404, 'not-found');
    expect(message).toContain('“pine”');
    await app.refused(app.send('post', path, { material: 'pine' }), 400, 'bad-request');
    for (const [method, rest] of [
      ['get', 'search'],
      ['post', 'search'],
      ['post', 'stop'],
    ] as const)
      await app.refused(app.send(method, `/api/projects/999999/cutting/${rest}`), 404, 'not-found');
  });
});

describe('a plan that is being sawn', () => {
  it('is kept as it is: no search begins, and none that was on changes it', async () => {
    const { app, window } = await listening({ ...SHORT, searchMs: 0 });
    const state = await imported(app, hardCutting());
    const path = `/api/projects/${state.id}/cutting`;
    const [layout] = (await app.send('get', path)).body.layouts as { key: string }[];
    const tick = (cut: boolean) =>
      app.send('post', `${path}/ticks`, { layout: layout?.key, pieces: [{ sheet: 0, piece: 0 }], cut });
    await tick(true);
    const first = await window(state.id);
    const asked = await app.send('post', `${path}/search`);
    expect([asked.status, only(asked.body).state]).toEqual([202, 'kept']);
    await tick(false);
    expect(only((await app.send('post', `${path}/search`)).body).state).toBe('running');
    await tick(true);
    await first.until<CuttingSearchAnswer>('cutting', (data) => only(data).state === 'kept');
    await expect
      .poll(async () => only((await app.send('get', `${path}/search`)).body).state, { timeout: 10_000 })
      .toBe('kept');
    const plan = (await app.send('get', `/api/projects/${state.id}/plan`)).body as PlanView;
    expect(plan.materials).toEqual(state.plan.materials);
    expect(app.db.prepare('SELECT COUNT(*) FROM cutting_answer').pluck().get()).toBe(0);
  });
});

describe('a plan some of whose sheets are being cut', () => {
  it('has the rest searched when the list changes, and the sheets begun stay', async () => {
    const { app, window, send } = await listening({ ...SHORT, mostSteps: 120 });
    const state = await imported(app, { ...hardCutting(2), parts: hardCutting(2).parts.slice(0, 1) });
    const path = `/api/projects/${state.id}/cutting`;
    const [begun] = (await app.send('get', path)).body.layouts as CuttingLayout[];
    if (begun === undefined) throw new Error('nothing is cut');
    await app.send('post', `${path}/ticks`, {
      layout: begun.key,
      pieces: [{ sheet: 0, piece: 0 }],
      cut: true,
    });
    // Two more lists on top of what is being cut.
    const changes = [...hardCutting(2).parts, ...hardCutting(1).parts].map(({ id: _, ...values }) => ({
      op: 'insert',
      table: 'parts',
      values,
    }));
    const added = await send('POST', `/api/projects/${state.id}/changes`, {
      revision: state.revision,
      changes,
    });
    expect(added.status).toBe(200);
    const before = (added.body as ChangeAnswer).plan.materials[0];
    const first = await window(state.id);
    const over = await first.until<CuttingSearchAnswer>('cutting', isOver);
    const project = (await app.send('get', `/api/projects/${state.id}`)).body as ProjectState;
    expect(isBetter(costAndOffcut(project.plan), [before?.costMinor ?? 0, 0])).toBe(true);
    expect(broken(project, project.plan)).toEqual([]);
    const told = only(over);
    expect(told.boundCostMinor).toBeLessThanOrEqual(told.costMinor ?? 0);
    expect(told.boundCostMinor).toBeGreaterThan(0);
    const layouts = (await app.send('get', path)).body.layouts as CuttingLayout[];
    expect(layouts.find(({ key }) => key === begun.key)?.done).toEqual([{ sheet: 0, piece: 0 }]);
  });
});

describe('a search that breaks down', () => {
  /** A thread that ends with an error on its first task, and works when it is started again. */
  function breaking(): URL {
    const file = `${freshFile()}.mjs`;
    const broken = JSON.stringify(`${file}.broken`);
    const sound = new URL('../../server/cutting-search/start-search-worker.mjs', import.meta.url).href;
    writeFileSync(
      file,
      `import { existsSync, writeFileSync } from 'node:fs';
      import { parentPort } from 'node:worker_threads';
      if (existsSync(${broken})) await import(${JSON.stringify(sound)});
      else
        parentPort.once('message', () => {
          writeFileSync(${broken}, '');
          throw new Error('broken on purpose');
        });`,
    );
    return pathToFileURL(file);
  }

  it('is said, leaves the plan as it is, and goes on when it is tried again', async () => {
    const { app, window } = await listening({ ...SHORT, mostSteps: 120 }, { cuttingWorker: breaking() });
    const state = await imported(app, hardCutting(2));
    const first = await window(state.id);
    await first.until<CuttingSearchAnswer>('cutting', (data) => only(data).state === 'failed');
    const path = `/api/projects/${state.id}`;
    const plan = (await app.send('get', `${path}/plan`)).body as PlanView;
    expect(plan.materials).toEqual(state.plan.materials);
    // Not by itself: it would break down again and again.
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect(only((await app.send('get', `${path}/cutting/search`)).body).state).toBe('failed');

    const { body } = await app.send('post', `${path}/cutting/search`, { materialId: 'birch-ply-18' });
    expect(only(body).state).toBe('running');
    await first.until('cutting', isOver);
    const after = (await app.send('get', `${path}/plan`)).body as PlanView;
    expect(isBetter(costAndOffcut(after), costAndOffcut(state.plan))).toBe(true);
  });

  it('holds up no other: an edit asks another question, and that is searched', async () => {
    const { app, window, send } = await listening({ ...SHORT, mostSteps: 20 }, { cuttingWorker: breaking() });
    const state = await imported(app, hardCutting(2));
    const first = await window(state.id);
    await first.until<CuttingSearchAnswer>('cutting', (data) => only(data).state === 'failed');
    const part = `/api/projects/${state.id}/parts/${state.rows.parts[0]?.id}`;
    await send('PATCH', part, { revision: state.revision, width: '271' });
    await first.until<CuttingSearchAnswer>(
      'cutting',
      (data) => data.revision > state.revision && isOver(data),
    );
  });
});

describe('the program as it is started from the command line', () => {
  it('searches in a thread of its own, and ends at once while that is busy', async () => {
    const program = fileURLToPath(new URL('../../server/main.ts', import.meta.url));
    const child = spawn(process.execPath, ['--import', 'tsx', program], {
      env: {
        PATH: process.env.PATH ?? '',
        PORT: '0',
        PLYWRIGHT_DB: freshFile(),
        PLYWRIGHT_CUTTING_SECONDS: '60',
      },
    });
    onTestFinished(() => {
      child.kill('SIGKILL');
    });
    let errors = '';
    child.stderr.on('data', (chunk: Buffer) => {
      errors += chunk.toString();
    });
    const [line] = (await once(child.stdout, 'data')) as [Buffer];
    const url = /http:\/\/\S+/.exec(line.toString())?.[0] ?? '';
    const answer = await fetch(`${url}/api/projects/import`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(hardCutting()),
    });
    const { id } = (await answer.json()) as ProjectState;
    const window = await eventWindow(url, id);
    onTestFinished(window.close);
    await window.until<CuttingSearchAnswer>('cutting', ({ planVersion }) => planVersion > 0);
    await window.until('cutting', isRunning);
    const end = once(child, 'close');
    const begun = performance.now();
    child.kill('SIGTERM');
    expect([(await end)[0], errors]).toEqual([0, '']);
    expect(performance.now() - begun).toBeLessThan(4000);
  });
});

describe('advice', () => {
  it('is worked out for the plan as it is, in sentences that name the parts', async () => {
    const { app, window, send } = await listening({ ...SHORT, searchMs: 100, adviceMs: 4000 });
    // Two columns of 1219 mm and a kerf of 3.2 are 2441.2 mm of 2440: 1.2 mm too long by two parts, so 1 mm each.
    const document = {
      ...easyCutting,
      settings: { ...easyCutting.settings, kerfMm: 3.2, sheetTrimMm: 0 },
      parts: [{ ...easyCutting.parts[0], name: 'Door', quantity: '2', length: '1219', width: '1200' }],
    };
    const { id, rows } = await imported(app, document);
    const first = await window(id);
    const told = only(
      await first.until<CuttingSearchAnswer>('cutting', (data) => only(data).advice !== null),
    );
    const shorter = told.advice?.find(({ kind }) => kind === 'smaller');
    expect(shorter?.sentence).toMatch(/^“Door” 1 mm shorter: 1 sheet in place of \d/);
    expect(shorter?.partIds).toEqual([rows.parts[0]?.id]);
    // A new name is in the sentence at once; a new width asks for new advice.
    const part = `/api/projects/${id}/parts/${rows.parts[0]?.id}`;
    await send('PATCH', part, { revision: 1, name: 'Gate' });
    const named = only((await send('GET', `/api/projects/${id}/cutting/search`)).body);
    expect(named.advice?.map(({ sentence }) => sentence).join()).toContain('“Gate” 1 mm shorter');
    await send('PATCH', part, { revision: 2, width: '1190' });
    expect(only((await send('GET', `/api/projects/${id}/cutting/search`)).body).advice).toBe(null);
  });
});
