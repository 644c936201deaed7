import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { forgetDeletedProjects } from '../../db/delete-project.ts';
import { openDatabase } from '../../db/open.ts';
import { type CuttingAnswer, cuttingAnswers } from '../../server/cutting-search/cutting-answers.ts';
import { type CuttingSettings, DEFAULT_CUTTING } from '../../server/cutting-search/cutting-settings.ts';
import type {
  ChangeAnswer,
  CuttingSearchAnswer,
  MaterialSearch,
  PlanView,
  ProjectState,
} from '../../server/http/contract.ts';
import { createApp } from '../../server/http/create-app.ts';
import { largestOffcutMm2 } from '../../server/planning/cutting/largest-offcut.ts';
import { seededRandom } from '../bench/seeded-random.ts';
import { freshFile } from '../db/fresh-file.ts';
import { brokenRules } from '../planning/cutting/check-layout.ts';
import { leastCostByTrying } from '../planning/cutting/least-cost-by-trying.ts';
import { type EventWindow, eventWindow } from './event-window.ts';
import { easyCutting, hardCutting } from './hard-cutting.ts';
import { type OpenApp, openApp } from './open-app.ts';

const SHORT: CuttingSettings = { ...DEFAULT_CUTTING, searchMs: 2500, adviceMs: 0, restMs: 20 };

interface Listening {
  readonly app: OpenApp;
  readonly url: string;
  readonly send: (method: string, path: string, body?: object) => Promise<{ status: number; body: never }>;
  readonly window: (id: string) => Promise<EventWindow>;
}

/** The app with searches, on a port, so that windows can listen. */
async function listening(cutting: CuttingSettings = SHORT): Promise<Listening> {
  const app = openApp({ cutting });
  const server = createServer(app.express).listen(0, '127.0.0.1');
  await once(server, 'listening');
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return {
    app,
    url,
    async send(method, path, body) {
      const init =
        body === undefined
          ? {}
          : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
      const answer = await fetch(`${url}${path}`, { method, ...init });
      return { status: answer.status, body: (await answer.json()) as never };
    },
    async window(id) {
      const window = await eventWindow(url, id);
      onTestFinished(window.close);
      return window;
    },
  };
}

async function imported(app: OpenApp, document: object): Promise<ProjectState> {
  const { status, body } = await app.send('post', '/api/projects/import', document);
  expect(status).toBe(201);
  return body as ProjectState;
}

function only(answer: CuttingSearchAnswer): MaterialSearch {
  expect(answer.materials).toHaveLength(1);
  return answer.materials[0] as MaterialSearch;
}

function costAndOffcut({ materials: [material] }: PlanView): readonly [number, number] {
  if (material === undefined) throw new Error('nothing is cut');
  return [material.costMinor ?? 0, largestOffcutMm2(material.layouts)];
}

function isBetter(one: readonly [number, number], other: readonly [number, number]): boolean {
  return one[0] < other[0] || (one[0] === other[0] && one[1] > other[1] + 1);
}

/** What the layouts of a plan break of the rules of sawing; the part list says what must come out. */
function broken(state: ProjectState, plan: PlanView): string[] {
  const demands = state.rows.parts.map((part) => ({
    partId: part.id,
    lengthMm: Number.parseFloat(part.length),
    widthMm: Number.parseFloat(part.width),
    count: Number(part.quantity),
    grain: part.grain,
  }));
  const { kerfMm, sheetTrimMm } = state.settings;
  return plan.materials.flatMap(({ layouts }) =>
    brokenRules({ layouts }, { kerfMm, trimMm: sheetTrimMm, demands }),
  );
}

const isRunning = (data: CuttingSearchAnswer): boolean => only(data).state === 'running';
const isOver = (data: CuttingSearchAnswer): boolean =>
  ['idle', 'proven'].includes(only(data).state) && only(data).searchedMs > 0;

describe('a window on a project whose cutting can be better', () => {
  it('hears a better plan without a new revision, and reads layouts that can be cut', async () => {
    const { app, window } = await listening();
    const state = await imported(app, hardCutting());
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

  it('has its edits answered while the search goes on, as fast as without', async () => {
    const { app, window, send } = await listening({ ...SHORT, searchMs: 20_000 });
    const state = await imported(app, hardCutting());
    const patch = async (
      id: string,
      part: string,
      revision: number,
    ): Promise<{ ms: number; revision: number }> => {
      const begun = performance.now();
      const { status, body } = await send('PATCH', `/api/projects/${id}/parts/${part}`, {
        revision,
        note: `${revision}`,
      });
      expect(status).toBe(200);
      return { ms: performance.now() - begun, revision: (body as ChangeAnswer).revision };
    };
    const many = async (id: string, part: string, from: number): Promise<number> => {
      const times: number[] = [];
      let revision = from;
      for (let edit = 0; edit < 15; edit++) {
        const { ms, revision: next } = await patch(id, part, revision);
        times.push(ms);
        revision = next;
      }
      return times.sort((a, b) => a - b)[7] as number;
    };
    const alone = await imported(app, hardCutting());
    const calm = await many(alone.id, alone.rows.parts[0]?.id ?? '', alone.revision);

    const first = await window(state.id);
    await first.until('cutting', isRunning);
    const busy = await many(state.id, state.rows.parts[0]?.id ?? '', state.revision);
    // A note changes no question, so that the same search is still on.
    const told = only((await send('GET', `/api/projects/${state.id}/cutting/search`)).body);
    expect(told.state).toBe('running');
    // Two processors at least; the margin is for a machine that does other work as well.
    expect(busy).toBeLessThan(3 * calm + 50);
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
  it('goes on from where it was, longer, and stops when told', async () => {
    const { app } = await listening({ ...SHORT, searchMs: 0 });
    const state = await imported(app, hardCutting(1));
    const path = `/api/projects/${state.id}/cutting`;
    const read = async (): Promise<MaterialSearch> => only((await app.send('get', `${path}/search`)).body);
    const begun = await app.send('post', `${path}/search`, { materialId: 'birch-ply-18' });
    expect([begun.status, only(begun.body).state]).toEqual([202, 'running']);
    await expect.poll(async () => (await read()).state, { timeout: 10_000 }).not.toBe('running');
    const once = await read();
    expect(once.searchedMs).toBeGreaterThanOrEqual(900);
    const cost = costAndOffcut((await app.send('get', `/api/projects/${state.id}/plan`)).body);

    await app.send('post', `${path}/search`);
    expect((await read()).state).toBe('running');
    const { body } = await app.send('post', `${path}/stop`);
    expect(['idle', 'running']).toContain(only(body).state);
    await expect.poll(async () => (await read()).state, { timeout: 4000 }).toBe('idle');
    const twice = await read();
    expect(twice.searchedMs).toBeGreaterThan(once.searchedMs);
    expect(twice.searchedMs).toBeLessThan(once.searchedMs + 900);
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

describe('what a search has found', () => {
  /** A project that was searched, and its plan after that. */
  async function searched(settings: Partial<CuttingSettings> = {}) {
    const open = await listening({ ...SHORT, mostSteps: 120, ...settings });
    const state = await imported(open.app, hardCutting(2));
    const first = await open.window(state.id);
    await first.until('cutting', isOver);
    first.close();
    const plan = (await open.app.send('get', `/api/projects/${state.id}/plan`)).body as PlanView;
    expect(isBetter(costAndOffcut(plan), costAndOffcut(state.plan))).toBe(true);
    return { ...open, state, plan };
  }

  /** The plan as another start of the program answers it from the same file. */
  async function afterRestart(app: OpenApp, path: string): Promise<never> {
    const db = openDatabase(app.db.name);
    const log = { info() {}, error() {}, warn() {} } as never;
    const second = createApp(db, { clientFolder: null, allowedHosts: [], passphrase: null, log });
    const server = createServer(second.express).listen(0, '127.0.0.1');
    await once(server, 'listening');
    const { port } = server.address() as AddressInfo;
    const answer = await fetch(`http://127.0.0.1:${port}${path}`);
    const body = (await answer.json()) as never;
    server.close();
    second.close();
    db.close();
    return body;
  }

  it('is there after a restart, and not searched again by itself', async () => {
    const { app, state, plan } = await searched();
    expect(await afterRestart(app, `/api/projects/${state.id}/plan`)).toEqual(plan);
    const told = only(await afterRestart(app, `/api/projects/${state.id}/cutting/search`));
    expect(told.searchedMs).toBeGreaterThan(0);
  });

  it('is not used for another question, and is again when an undo brings its own back', async () => {
    const { app, state, plan } = await searched();
    const kerf = (revision: number, kerfMm: number) =>
      app.send('patch', `/api/projects/${state.id}/settings`, { revision, kerfMm });
    const fresh = await imported(app, {
      ...hardCutting(2),
      settings: { ...hardCutting(2).settings, kerfMm: 3.4 },
    });
    const changed = (await kerf(state.revision, 3.4)).body as ChangeAnswer;
    const sizes = (materials: PlanView['materials']) =>
      materials.map(({ stocks, costMinor, layouts }) => [stocks, costMinor, largestOffcutMm2(layouts)]);
    expect(sizes(changed.plan.materials)).toEqual(sizes(fresh.plan.materials));
    const back = (await app.send('post', `/api/projects/${state.id}/undo`, { revision: changed.revision }))
      .body;
    expect((back as ChangeAnswer).plan.materials).toEqual(plan.materials);
  });

  it.each([
    ['a piece taken away', (sheets: string) => sheets.replace(/\{"piece":0,"turned":(true|false)\},?/, '')],
    ['no JSON', () => '[{'],
    ['a sheet said to be cut from nothing', (sheets: string) => sheets.replace(/"stock":\d+/, '"stock":99')],
  ])('is refused when its row holds %s', async (_what, tamper) => {
    const { app, state } = await searched();
    const sheets = app.db.prepare('SELECT sheets FROM cutting_answer').pluck().get() as string;
    const tampered = tamper(sheets);
    expect(tampered).not.toBe(sheets);
    app.db.prepare('UPDATE cutting_answer SET sheets = ?').run(tampered);
    const plan = await afterRestart(app, `/api/projects/${state.id}/plan`);
    expect((plan as PlanView).materials).toEqual(state.plan.materials);
  });

  it('is refused when its bound was raised to what the plan costs', async () => {
    const { app, state } = await searched();
    app.db.prepare('UPDATE cutting_answer SET bound_cost = 1e9, bound_stocks = 99').run();
    const plan = await afterRestart(app, `/api/projects/${state.id}/plan`);
    expect((plan as PlanView).materials).toEqual(state.plan.materials);
  });

  it('is refused by the plan when it cannot be cut, however sound its row is', async () => {
    const { app, state } = await searched();
    const [answer] = cuttingAnswers(app.db).found(Number(state.id)) as CuttingAnswer[];
    if (answer === undefined) throw new Error('nothing was found');
    // One sheet less: cheaper, and some parts are missing.
    const less = { ...answer, sheets: answer.sheets.slice(1), boundCost: 0, boundStocks: 0 };
    const more = { changesPlan: true, current: new Set<string>(), at: new Date().toISOString() };
    cuttingAnswers(app.db).put(Number(state.id), less, more);
    const plan = (await afterRestart(app, `/api/projects/${state.id}/plan`)) as PlanView;
    expect(plan.materials).toEqual(state.plan.materials);
  });

  it('goes with its project, and the oldest go when there are many', async () => {
    const { app, send, window } = await listening({ ...SHORT, searchMs: 30, restMs: 1 });
    const { id, rows, revision: start } = await imported(app, easyCutting);
    const count = app.db.prepare('SELECT COUNT(*) FROM cutting_answer WHERE project_id = ?').pluck();
    const first = await window(id);
    await first.until('cutting', isOver);
    let revision = start;
    for (let edit = 0; edit < 45; edit++) {
      const { body } = await send('PATCH', `/api/projects/${id}/parts/${rows.parts[0]?.id}`, {
        revision,
        width: `${1000 + edit}`,
      });
      revision = (body as ChangeAnswer).revision;
      const now = revision;
      await first.until<CuttingSearchAnswer>('cutting', (data) => data.revision === now && isOver(data));
    }
    expect(count.get(id)).toBe(40);
    await app.send('delete', `/api/projects/${id}`, { revision });
    // A deleted project is kept for 30 days, with all that is its own.
    forgetDeletedProjects(app.db, new Date(Date.now() + 31 * 24 * 60 * 60 * 1000));
    expect(count.get(id)).toBe(0);
  });
});

describe('the whole way from the part list to the plan, for a handful of parts', () => {
  it('comes to what trying everything comes to, and proves no less', async () => {
    const { app, window } = await listening({ ...SHORT, searchMs: 400 });
    const packs = [
      { lengthMm: 1000, widthMm: 600, cost: 100 },
      { lengthMm: 700, widthMm: 600, cost: 64 },
    ];
    const { status } = await app.send('post', '/api/products', {
      kind: 'sheet',
      name: 'Small ply',
      id: 'small-ply',
      packs: packs.map(({ lengthMm, widthMm, cost }) => ({
        id: `${lengthMm}`,
        label: `${lengthMm} x ${widthMm}`,
        amount: 1,
        lengthMm,
        widthMm,
        priceMinor: cost,
        currency: 'EUR',
        supplierId: null,
        basis: 'user',
        source: '',
        readOn: null,
        note: null,
      })),
    });
    expect(status).toBe(201);
    const random = seededRandom(11);
    const between = (low: number, high: number): number => low + Math.floor(random() * (high - low));
    for (let list = 0; list < 8; list++) {
      const pieces = Array.from({ length: between(3, 6) }, () => ({
        lengthMm: between(200, 700),
        widthMm: between(200, 600),
        turnable: random() < 0.5,
      }));
      const state = await imported(app, {
        ...easyCutting,
        settings: { ...easyCutting.settings, kerfMm: 3, sheetTrimMm: 0 },
        parts: pieces.map(({ lengthMm, widthMm, turnable }, index) => ({
          id: `p${index}`,
          name: `Part ${index}`,
          quantity: '1',
          length: String(lengthMm),
          width: String(widthMm),
          materialId: 'small-ply',
          grain: turnable ? 'free' : 'along',
        })),
      });
      const first = await window(state.id);
      await first.until('cutting', isOver);
      first.close();
      const plan = (await app.send('get', `/api/projects/${state.id}/plan`)).body as PlanView;
      const least = leastCostByTrying(pieces, packs, 3);
      const told = only((await app.send('get', `/api/projects/${state.id}/cutting/search`)).body);
      expect([list, plan.materials[0]?.costMinor]).toEqual([list, least]);
      expect(told.boundCostMinor).toBeLessThanOrEqual(least);
      expect(broken(state, plan)).toEqual([]);
    }
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

describe('the same steps from the same start', () => {
  it('find the same plan in two programs', async () => {
    const settings = { ...SHORT, searchMs: 60_000, mostSteps: 120 };
    const plans: unknown[] = [];
    for (let program = 0; program < 2; program++) {
      const { app, window } = await listening(settings);
      const { id } = await imported(app, hardCutting(1));
      const first = await window(id);
      await first.until('cutting', isOver, 60_000);
      plans.push(((await app.send('get', `/api/projects/${id}/plan`)).body as PlanView).materials);
    }
    expect(plans[0]).toEqual(plans[1]);
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
