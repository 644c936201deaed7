import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import type { Express } from 'express';
import { pino } from 'pino';
import request, { type Response } from 'supertest';
import { afterAll, expect, onTestFinished } from 'vitest';
import { openDatabase } from '../../db/open.ts';
import type { AppConfig } from '../../server/http/app-context.ts';
import type { ErrorCode, ProjectState } from '../../server/http/contract.ts';
import { createApp } from '../../server/http/create-app.ts';
import { ALL_ROUTES } from '../../server/http/routes/all-routes.ts';
import { prepareDatabase } from '../../server/prepare-database.ts';
import { startServer } from '../../server/start-server.ts';
import { startSettings } from '../../server/start-settings.ts';
import { freshFile } from '../db/fresh-file.ts';
import { document } from './small-document.ts';

/** The real program on a fresh database, for tests. */

const quiet = pino({ level: 'silent' });

export interface OpenApp {
  readonly db: Database;
  readonly express: Express;
  /**
   * Sends one request to the app. Every answer is held against the schema its route declares, and every refusal
   * against the one error shape, so that each test also tests the OpenAPI document.
   */
  readonly send: (
    method: 'get' | 'post' | 'put' | 'patch' | 'delete',
    path: string,
    body?: unknown,
  ) => Promise<Response>;
  /** Expects a refusal and answers its error. */
  readonly refused: (answer: Promise<Response>, status: number, code: ErrorCode) => Promise<RefusedError>;
  /** Stores the small project through the import route. */
  readonly importSmall: () => Promise<ProjectState>;
}

export interface RefusedError {
  readonly code: ErrorCode;
  readonly message: string;
  readonly wayOut: string;
  readonly field: string | null;
  readonly revision?: number;
  readonly faults?: readonly { readonly field: string; readonly message: string }[];
}

let prepared: string | null = null;

/** A database with the catalogue and the demo projects, made once per test file. */
function preparedFile(): string {
  if (prepared === null) {
    prepared = join(mkdtempSync(join(tmpdir(), 'plywright-prepared-')), 'plywright.db');
    const db = openDatabase(prepared);
    prepareDatabase(db, new Date());
    db.close();
  }
  return prepared;
}

afterAll(() => {
  if (prepared !== null) rmSync(dirname(prepared), { recursive: true, force: true });
});

/** A fresh database with the catalogue and the demo projects, and the app on it; closed when the test is over. */
export function openApp(config: Partial<AppConfig> = {}): OpenApp {
  const path = freshFile();
  copyFileSync(preparedFile(), path);
  const db = openDatabase(path);
  const app = createApp(db, {
    clientFolder: null,
    allowedHosts: [],
    passphrase: null,
    log: quiet,
    ...config,
  });
  onTestFinished(() => {
    app.close();
    db.close();
  });
  const send: OpenApp['send'] = async (method, path, body) => {
    const asked = request(app.express)[method](path);
    const answer = await (body === undefined ? asked : asked.send(body as object));
    checkAnswer(method, path, answer);
    return answer;
  };
  return {
    db,
    express: app.express,
    send,
    async refused(answer, status, code) {
      const { status: given, body } = await answer;
      expect([given, body.error?.code]).toEqual([status, code]);
      return body.error as RefusedError;
    },
    async importSmall() {
      const answer = await send('post', '/api/projects/import', document);
      expect(answer.status).toBe(201);
      return answer.body as ProjectState;
    },
  };
}

function checkAnswer(method: string, path: string, answer: Response): void {
  if (answer.status >= 400) {
    checkRefusal(answer);
    return;
  }
  const { pathname } = new URL(path, 'http://localhost');
  const route = ALL_ROUTES.find((one) => one.method === method && patternOf(one.path).test(pathname));
  if (route === undefined) throw new Error(`no route declares ${method} ${path}`);
  expect(answer.status).toBe(route.status);
  if (route.answer === null) expect(answer.text).toBe('');
  else if (route.answerType === 'application/json') route.answer.parse(answer.body);
}

function checkRefusal(answer: Response): void {
  const { error } = answer.body as { error: RefusedError };
  expect(Object.keys(answer.body as object)).toEqual(['error']);
  expect(error.message.length).toBeGreaterThan(5);
  expect(error.wayOut.length).toBeGreaterThan(5);
  expect(`${error.message} ${error.wayOut}`).not.toMatch(/SQLITE|node_modules|\bat .*\.ts:\d|undefined|NaN/);
}

function patternOf(path: string): RegExp {
  return new RegExp(`^${path.replace(/\{\w+\}/g, '[^/]+')}$`);
}

export interface StartedApp {
  readonly url: string;
  readonly db: Database;
  readonly close: () => Promise<void>;
}

/**
 * The program as `npm start` starts it, on a free port and a database of its own, with the built client. Without the
 * searches for better cutting, unless the environment given asks for them: a plan must not change under a test.
 */
export async function startApp(env: NodeJS.ProcessEnv = {}): Promise<StartedApp> {
  const folder = mkdtempSync(join(tmpdir(), 'plywright-'));
  const settings = startSettings({
    PORT: '0',
    PLYWRIGHT_DB: join(folder, 'plywright.db'),
    PLYWRIGHT_CUTTING_SECONDS: '0',
    ...env,
  });
  const { url, db, close } = await startServer(settings, quiet);
  return {
    url,
    db,
    async close() {
      await close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
