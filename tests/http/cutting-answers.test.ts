import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import request from 'supertest';
import { afterAll, describe, expect, it, onTestFinished } from 'vitest';
import { forgetDeletedProjects } from '../../db/delete-project.ts';
import { openDatabase } from '../../db/open.ts';
import { type CuttingAnswer, cuttingAnswers } from '../../server/cutting-search/cutting-answers.ts';
import type { ChangeAnswer, PlanView, ProjectState } from '../../server/http/contract.ts';
import { createApp } from '../../server/http/create-app.ts';
import { largestOffcutMm2 } from '../../server/planning/cutting/largest-offcut.ts';
import { seededRandom } from '../bench/seeded-random.ts';
import { freshFile } from '../db/fresh-file.ts';
import { leastCostByTrying } from '../planning/cutting/least-cost-by-trying.ts';
import {
  broken,
  costAndOffcut,
  imported,
  isBetter,
  isOver,
  listening,
  only,
  SHORT,
} from './cutting-listening.ts';
import { easyCutting, hardCutting } from './hard-cutting.ts';
import { openApp } from './open-app.ts';

const STEPS = { ...SHORT, searchMs: 60_000, mostSteps: 120 };

interface Searched {
  /** A copy of the database after the search. */
  readonly file: string;
  readonly state: ProjectState;
  readonly plan: PlanView;
}

/** A project that was searched, and its plan after that. */
async function search(): Promise<Searched> {
  const { app, window } = await listening(STEPS);
  const state = await imported(app, hardCutting(2));
  const first = await window(state.id);
  await first.until('cutting', isOver, 60_000);
  const plan = (await app.send('get', `/api/projects/${state.id}/plan`)).body as PlanView;
  expect(isBetter(costAndOffcut(plan), costAndOffcut(state.plan))).toBe(true);
  const file = join(folder, `${++searches}.db`);
  app.db.prepare('VACUUM INTO ?').run(file);
  return { file, state, plan };
}

const folder = mkdtempSync(join(tmpdir(), 'plywright-searched-'));
let searches = 0;
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Searched once for all tests; each works on a copy of its own. */
let once: Promise<Searched> | null = null;

async function searched() {
  once ??= search();
  const { file, state, plan } = await once;
  const copy = freshFile();
  copyFileSync(file, copy);
  return { state, plan, ...opened(copy) };
}

/** The program as another start of it finds the file. */
function opened(file: string) {
  const db = openDatabase(file);
  const log = pino({ level: 'silent' });
  const app = createApp(db, { clientFolder: null, allowedHosts: [], passphrase: null, log });
  onTestFinished(() => {
    app.close();
    db.close();
  });
  return {
    db,
    read: async (path: string) => (await request(app.express).get(path)).body as never,
    write: async (method: 'post' | 'patch' | 'delete', path: string, body: object) =>
      (await request(app.express)[method](path).send(body)).body as never,
  };
}

describe('what a search has found', () => {
  it('is there after a restart, and not searched again by itself', async () => {
    const { read, state, plan } = await searched();
    expect(await read(`/api/projects/${state.id}/plan`)).toEqual(plan);
    const told = only(await read(`/api/projects/${state.id}/cutting/search`));
    expect(told.searchedMs).toBeGreaterThan(0);
  });

  it('is the same when another program takes the same steps from the same start', async () => {
    const { plan } = await searched();
    expect((await search()).plan.materials).toEqual(plan.materials);
  });

  it('is not used for another question, and is again when an undo brings its own back', async () => {
    const { state, plan, write } = await searched();
    const path = `/api/projects/${state.id}`;
    const settings = { ...hardCutting(2).settings, kerfMm: 3.4 };
    const fresh = await imported(openApp(), { ...hardCutting(2), settings });
    const changed: ChangeAnswer = await write('patch', `${path}/settings`, {
      revision: state.revision,
      kerfMm: 3.4,
    });
    const sizes = (materials: PlanView['materials']) =>
      materials.map(({ stocks, costMinor, layouts }) => [stocks, costMinor, largestOffcutMm2(layouts)]);
    expect(sizes(changed.plan.materials)).toEqual(sizes(fresh.plan.materials));
    const back: ChangeAnswer = await write('post', `${path}/undo`, { revision: changed.revision });
    expect(back.plan.materials).toEqual(plan.materials);
  });

  it.each([
    ['a piece taken away', (sheets: string) => sheets.replace(/\{"piece":0,"turned":(true|false)\},?/, '')],
    ['no JSON', () => '[{'],
    ['a sheet said to be cut from nothing', (sheets: string) => sheets.replace(/"stock":\d+/, '"stock":99')],
  ])('is refused when its row holds %s', async (_what, tamper) => {
    const { db, read, state } = await searched();
    const sheets = db.prepare('SELECT sheets FROM cutting_answer').pluck().get() as string;
    const tampered = tamper(sheets);
    expect(tampered).not.toBe(sheets);
    db.prepare('UPDATE cutting_answer SET sheets = ?').run(tampered);
    const plan: PlanView = await read(`/api/projects/${state.id}/plan`);
    expect(plan.materials).toEqual(state.plan.materials);
  });

  it('is refused when its bound was raised to what the plan costs', async () => {
    const { db, read, state } = await searched();
    db.prepare('UPDATE cutting_answer SET bound_cost = 1e9, bound_stocks = 99').run();
    const plan: PlanView = await read(`/api/projects/${state.id}/plan`);
    expect(plan.materials).toEqual(state.plan.materials);
  });

  it('is refused by the plan when it cannot be cut, however sound its row is', async () => {
    const { db, read, state } = await searched();
    const [answer] = cuttingAnswers(db).found(Number(state.id)) as CuttingAnswer[];
    if (answer === undefined) throw new Error('nothing was found');
    // One sheet less: cheaper, and some parts are missing.
    const less = { ...answer, sheets: answer.sheets.slice(1), boundCost: 0, boundStocks: 0 };
    const more = { changesPlan: true, current: new Set<string>(), at: new Date().toISOString() };
    cuttingAnswers(db).put(Number(state.id), less, more);
    const plan: PlanView = await read(`/api/projects/${state.id}/plan`);
    expect(plan.materials).toEqual(state.plan.materials);
  });

  it('goes with its project, and the oldest go when there are many', async () => {
    const { db, state, write } = await searched();
    const id = Number(state.id);
    const answers = cuttingAnswers(db);
    const [answer] = answers.found(id) as CuttingAnswer[];
    if (answer === undefined) throw new Error('nothing was found');
    const at = new Date().toISOString();
    // The question of the plan as it stands is kept, though it is the oldest.
    const current = new Set([answer.question]);
    for (let number = 1; number <= 45; number++)
      answers.put(id, { ...answer, question: `q${number}` }, { changesPlan: false, current, at });
    const questions = db
      .prepare('SELECT question FROM cutting_answer WHERE project_id = ? ORDER BY id')
      .pluck();
    const kept = questions.all(id) as string[];
    expect([kept.length, kept[0], kept[1], kept.at(-1)]).toEqual([40, answer.question, 'q7', 'q45']);
    expect(answers.found(id)).toHaveLength(40);
    await write('delete', `/api/projects/${id}`, { revision: state.revision });
    // A deleted project is kept for 30 days, with all that is its own.
    forgetDeletedProjects(db, new Date(Date.now() + 31 * 24 * 60 * 60 * 1000));
    expect(questions.all(id)).toEqual([]);
  });
});

describe('the whole way from the part list to the plan, for a handful of parts', () => {
  it('comes to what trying everything comes to, and proves no less', async () => {
    const { app, window } = await listening({ ...SHORT, searchMs: 150 });
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
    for (let list = 0; list < 6; list++) {
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
