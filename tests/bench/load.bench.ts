import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import type { ChangeAnswer, CuttingSearchAnswer, ProjectState } from '../../server/http/contract.ts';
import { type EventWindow, eventWindow } from '../http/event-window.ts';
import { seededRandom } from './seeded-random.ts';

const KINDS = 300;
const PARTS = 5000;
const EDITS = 60;
const SEARCH_SECONDS = 10;

/**
 * 5,000 parts of 300 kinds in the running program: how long the first plan and the search beside it take, how much
 * memory the program holds at most, and how long edits wait meanwhile. `npm run bench -- load [edits]`; 60 by default.
 */
export async function run(args: string[]): Promise<void> {
  const edits = Number(args[0] ?? EDITS);
  const folder = mkdtempSync(join(tmpdir(), 'plywright-bench-'));
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', fileURLToPath(new URL('../../server/main.ts', import.meta.url))],
    {
      env: {
        PATH: process.env.PATH ?? '',
        PORT: '0',
        PLYWRIGHT_DB: join(folder, 'plywright.db'),
        PLYWRIGHT_CUTTING_SECONDS: String(SEARCH_SECONDS),
      },
    },
  );
  try {
    const [line] = (await once(child.stdout, 'data')) as [Buffer];
    const url = /http:\/\/\S+/.exec(line.toString())?.[0] ?? '';
    const start = performance.now();
    const state = await send<ProjectState>(url, 'POST', '/api/projects/import', manyParts());
    const [material] = state.plan.materials;
    console.log(
      `${PARTS} parts of ${KINDS} kinds: planned and stored in ${seconds(start)} s, ${material?.stocks} sheets, ` +
        `no plan needs fewer than ${material?.boundStocks}`,
    );
    const window = await eventWindow(url, state.id);
    await window.until<CuttingSearchAnswer>('cutting', isIn('running'), 20_000);
    await editMeanwhile(url, state, 'rename', edits);
    await window.until<CuttingSearchAnswer>('cutting', isIn('idle', 'proven'), 60_000);
    const after = await send<CuttingSearchAnswer>(url, 'GET', `/api/projects/${state.id}/cutting/search`);
    const [found] = after.materials;
    console.log(
      `searched to the end ${seconds(start)} s after the import: ${found?.stocks} sheets of at least ${found?.boundStocks}`,
    );
    await resize(url, window, state, edits);
    console.log(`memory at most ${peakMegabytes(child.pid as number)} MB`);
    window.close();
  } finally {
    child.kill('SIGTERM');
    await once(child, 'close');
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Edits of a width: each ends the search that is on and has the cutting planned anew. */
async function resize(url: string, window: EventWindow, { id }: ProjectState, edits: number): Promise<void> {
  const state = await send<ProjectState>(url, 'GET', `/api/projects/${id}`);
  await editMeanwhile(url, state, 'resize', 1);
  await window.until<CuttingSearchAnswer>('cutting', isIn('running'), 20_000);
  await editMeanwhile(url, await send<ProjectState>(url, 'GET', `/api/projects/${id}`), 'resize', edits);
}

async function editMeanwhile(
  url: string,
  { id, revision: first, rows }: ProjectState,
  kind: 'rename' | 'resize',
  edits: number,
): Promise<void> {
  const times: number[] = [];
  let revision = first;
  for (let edit = 0; edit < edits; edit++) {
    const part = rows.parts[(edit * 7) % rows.parts.length];
    const values = kind === 'rename' ? { name: `Part ${edit}` } : { width: `${150 + ((edit * 13) % 300)}` };
    const start = performance.now();
    const answer = await send<ChangeAnswer>(url, 'PATCH', `/api/projects/${id}/parts/${part?.id}`, {
      revision,
      ...values,
    });
    times.push(performance.now() - start);
    ({ revision } = answer);
  }
  if (edits < 2) return;
  times.sort((left, right) => left - right);
  const at = (share: number): string => (times[Math.floor(share * (times.length - 1))] ?? 0).toFixed(0);
  console.log(
    `${kind} during the search: ${edits} edits · min ${at(0)} · p50 ${at(0.5)} · p95 ${at(0.95)} · max ${at(1)} ms`,
  );
}

function manyParts() {
  const random = seededRandom(5);
  const between = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
  return {
    format: 'plywright-project',
    version: 1,
    settings: { name: 'Many parts', units: 'metric', currency: 'EUR' },
    parts: Array.from({ length: KINDS }, (_, index) => ({
      id: `p${index}`,
      name: `Part ${index}`,
      quantity: String(Math.floor(((index + 1) * PARTS) / KINDS) - Math.floor((index * PARTS) / KINDS)),
      length: String(between(150, 1100)),
      width: String(between(80, 600)),
      materialId: 'birch-ply-18',
      grain: random() < 0.3 ? 'free' : 'along',
    })),
  };
}

const isIn =
  (...states: readonly string[]) =>
  ({ materials }: CuttingSearchAnswer): boolean =>
    materials.some(({ state }) => states.includes(state));

async function send<Answer>(url: string, method: string, path: string, body?: object): Promise<Answer> {
  const init =
    body === undefined ? {} : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
  const answer = await fetch(`${url}${path}`, { method, ...init });
  if (!answer.ok) throw new Error(`${method} ${path}: ${answer.status} ${await answer.text()}`);
  return (await answer.json()) as Answer;
}

function seconds(start: number): string {
  return ((performance.now() - start) / 1000).toFixed(1);
}

/** Largest resident memory of a process so far, as Linux tells it. */
function peakMegabytes(pid: number): string {
  const kilobytes = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return kilobytes === undefined ? 'unknown' : (Number(kilobytes) / 1024).toFixed(0);
}
