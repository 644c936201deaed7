import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { ProjectState } from '../../server/http/contract.ts';
import { openApp } from './open-app.ts';

interface ReceivedEvent {
  readonly event: string;
  readonly data: Record<string, unknown>;
}

/** A window on a project: reads the stream of events as a browser does. */
class Window {
  readonly #reader: ReadableStreamDefaultReader<Uint8Array>;
  #text = '';

  constructor(stream: ReadableStream<Uint8Array>) {
    this.#reader = stream.getReader();
  }

  /** The next event; null when the stream has ended. */
  async next(): Promise<ReceivedEvent | null> {
    while (!this.#text.includes('\n\n')) {
      const { done, value } = await this.#reader.read();
      if (done) return null;
      this.#text += new TextDecoder().decode(value);
    }
    const end = this.#text.indexOf('\n\n');
    const lines = this.#text.slice(0, end).split('\n');
    this.#text = this.#text.slice(end + 2);
    const field = (name: string): string =>
      lines.find((line) => line.startsWith(`${name}: `))?.slice(name.length + 2) ?? '';
    return { event: field('event'), data: JSON.parse(field('data')) as Record<string, unknown> };
  }
}

async function listening() {
  const app = openApp();
  const server = createServer(app.express).listen(0, '127.0.0.1');
  await once(server, 'listening');
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const send = async (method: string, path: string, body?: object) =>
    await fetch(`${url}${path}`, {
      method,
      ...(body === undefined
        ? {}
        : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
    });
  const open = async (id: string): Promise<Window> => {
    const answer = await fetch(`${url}/api/projects/${id}/events`);
    expect(answer.headers.get('content-type')).toBe('text/event-stream');
    return new Window(answer.body as ReadableStream<Uint8Array>);
  };
  return { app, send, open };
}

describe('two windows on one project', () => {
  it('keep in step: each hears of the other’s edits, undo included, and reads the same', async () => {
    const { app, send, open } = await listening();
    const { id, rows } = await app.importSmall();
    const path = `/api/projects/${id}`;
    const [first, second] = [await open(id), await open(id)];
    for (const window of [first, second])
      expect(await window.next()).toEqual({ event: 'revision', data: { revision: 1 } });

    await send('PATCH', `${path}/parts/${rows.parts[0]?.id}`, { revision: 1, width: '410' });
    await send('POST', `${path}/undo`, { revision: 2 });
    for (const window of [first, second]) {
      expect(await window.next()).toEqual({ event: 'revision', data: { revision: 2 } });
      expect(await window.next()).toEqual({ event: 'revision', data: { revision: 3 } });
    }
    const state = (await (await send('GET', path)).json()) as ProjectState;
    expect([state.revision, state.rows]).toEqual([3, rows]);
  });

  it('hear nothing of refused edits, edits without effect and other projects', async () => {
    const { app, send, open } = await listening();
    const { id } = await app.importSmall();
    const other = await app.importSmall();
    const window = await open(id);
    await window.next();
    await send('PATCH', `/api/projects/${id}/settings`, { revision: 7, kerfMm: 1 });
    await send('PATCH', `/api/projects/${id}/settings`, { revision: 1, kerfMm: 3 });
    await send('PATCH', `/api/projects/${other.id}/settings`, { revision: 1, kerfMm: 1 });
    await send('PATCH', `/api/projects/${id}/settings`, { revision: 1, kerfMm: 2 });
    expect(await window.next()).toEqual({ event: 'revision', data: { revision: 2 } });
  });

  it('hear of a change of the catalogue', async () => {
    const { app, send, open } = await listening();
    const { id } = await app.importSmall();
    const window = await open(id);
    await window.next();
    await send('POST', '/api/products', { kind: 'sheet', name: 'Test ply' });
    expect(await window.next()).toEqual({ event: 'catalogue', data: {} });
  });

  it('are let go when the project is deleted', async () => {
    const { app, send, open } = await listening();
    const { id } = await app.importSmall();
    const window = await open(id);
    await window.next();
    expect((await send('DELETE', `/api/projects/${id}`, { revision: 1 })).status).toBe(204);
    expect(await window.next()).toBe(null);
    await app.refused(app.send('get', `/api/projects/${id}/events`), 404, 'not-found');
  });
});
