import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect, onTestFinished } from 'vitest';
import { type CuttingSettings, DEFAULT_CUTTING } from '../../server/cutting-search/cutting-settings.ts';
import type { AppConfig } from '../../server/http/app-context.ts';
import type {
  CuttingSearchAnswer,
  MaterialSearch,
  PlanView,
  ProjectState,
} from '../../server/http/contract.ts';
import { largestOffcutMm2 } from '../../server/planning/cutting/largest-offcut.ts';
import { brokenRules } from '../planning/cutting/check-layout.ts';
import { type EventWindow, eventWindow } from './event-window.ts';
import { type OpenApp, openApp } from './open-app.ts';

/** The app with searches for better cutting, and windows that hear of them. */

export const SHORT: CuttingSettings = { ...DEFAULT_CUTTING, searchMs: 2500, adviceMs: 0, restMs: 20 };

export interface Listening {
  readonly app: OpenApp;
  readonly url: string;
  readonly send: (method: string, path: string, body?: object) => Promise<{ status: number; body: never }>;
  readonly window: (id: string) => Promise<EventWindow>;
}

/** The app with searches, on a port, so that windows can listen. */
export async function listening(
  cutting: CuttingSettings = SHORT,
  config: Partial<AppConfig> = {},
): Promise<Listening> {
  const app = openApp({ cutting, ...config });
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

export async function imported(app: OpenApp, document: object): Promise<ProjectState> {
  const { status, body } = await app.send('post', '/api/projects/import', document);
  expect(status).toBe(201);
  return body as ProjectState;
}

export function only(answer: CuttingSearchAnswer): MaterialSearch {
  expect(answer.materials).toHaveLength(1);
  return answer.materials[0] as MaterialSearch;
}

export function costAndOffcut({ materials: [material] }: PlanView): readonly [number, number] {
  if (material === undefined) throw new Error('nothing is cut');
  return [material.costMinor ?? 0, largestOffcutMm2(material.layouts)];
}

export function isBetter(one: readonly [number, number], other: readonly [number, number]): boolean {
  return one[0] < other[0] || (one[0] === other[0] && one[1] > other[1] + 1);
}

/** What the layouts of a plan break of the rules of sawing; the part list says what must come out. */
export function broken(state: ProjectState, plan: PlanView): string[] {
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

export const isRunning = (data: CuttingSearchAnswer): boolean => only(data).state === 'running';
export const isOver = (data: CuttingSearchAnswer): boolean =>
  ['idle', 'proven'].includes(only(data).state) && only(data).searchedMs > 0;
