import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import request from 'supertest';
import { describe, expect, it, onTestFinished } from 'vitest';
import { fetchRaw } from './fetch-raw.ts';
import { openApp } from './open-app.ts';

describe('what comes from elsewhere', () => {
  it.each(['plywright.example', 'localhost.example:4860', '192.168.1.5', '127.0.0.1.example', ''])(
    'is refused when it was called by the name “%s”',
    async (host) => {
      const answer = await request(openApp().express).get('/api/projects').set('Host', host);
      expect([answer.status, answer.body.error.code]).toEqual([403, 'not-allowed']);
    },
  );

  it.each(['localhost', 'LOCALHOST:4860', '127.0.0.1:1', '[::1]:4860', 'shop-pc.local'])(
    'is let in when it was called by the name “%s”',
    async (host) => {
      const app = openApp({ allowedHosts: ['shop-pc.local'] });
      expect((await request(app.express).get('/api/health').set('Host', host)).status).toBe(200);
    },
  );

  it('is refused from a page of another site, and nothing is changed', async () => {
    const app = openApp();
    const before = (await app.send('get', '/api/projects')).body as object;
    const post = () =>
      request(app.express)
        .post('/api/projects')
        .set('Host', 'localhost:4860')
        .send({ name: 'x', units: 'us', currency: 'USD' });
    for (const origin of [
      'http://evil.example',
      'http://localhost:9999',
      'null',
      'https://localhost.evil.example',
    ])
      expect((await post().set('Origin', origin)).body.error.code).toBe('not-allowed');
    expect((await post().set('Sec-Fetch-Site', 'cross-site')).status).toBe(403);
    expect((await app.send('get', '/api/projects')).body).toEqual(before);
    expect(
      (await post().set('Origin', 'http://localhost:4860').set('Sec-Fetch-Site', 'same-origin')).status,
    ).toBe(201);
  });

  it('may be a link that is followed to here', async () => {
    const answer = await request(openApp().express).get('/api/health').set('Sec-Fetch-Site', 'cross-site');
    expect(answer.status).toBe(200);
  });
});

describe('every answer', () => {
  it('allows scripts from here alone and tells nobody what runs it', async () => {
    const { headers } = await openApp().send('get', '/api/health');
    expect(headers['content-security-policy']).toBe(
      "default-src 'self';style-src 'self' 'unsafe-inline';img-src 'self' data:;font-src 'self' data:;object-src 'none';base-uri 'self';form-action 'self';frame-ancestors 'none'",
    );
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['cache-control']).toBe('no-store');
    expect(headers).not.toHaveProperty('x-powered-by');
    expect(headers).not.toHaveProperty('strict-transport-security');
  });

  it('to an unknown route says that there is nothing', async () => {
    const app = openApp();
    await app.refused(app.send('get', '/api/nonsense'), 404, 'unknown-route');
    await app.refused(app.send('patch', '/api/projects', {}), 404, 'unknown-route');
    await app.refused(app.send('get', '/../package.json'), 404, 'unknown-route');
  });

  it('to a body that is not JSON says so', async () => {
    const app = openApp();
    for (const body of ['{"name":', 'name=x', '"text"', '', '{"a":1}}']) {
      const answer = await fetchRaw(app.express, '/api/projects', body, 'post');
      expect([answer.status, answer.body.error.code]).toEqual([400, 'bad-request']);
    }
    const form = await request(app.express).post('/api/projects').type('form').send({ name: 'x' });
    expect([form.status, form.body.error.code]).toEqual([400, 'bad-request']);
    const latin = await request(app.express)
      .post('/api/projects')
      .set('Content-Type', 'application/json; charset=klingon')
      .send('{}');
    expect([latin.status, latin.body.error.code]).toEqual([400, 'bad-request']);
  });

  it('to an address that cannot be decoded is a refusal, not a crash', async () => {
    const answer = await request(openApp().express).get('/api/projects/%E0%A4%A');
    expect([answer.status, answer.body.error.code]).toEqual([400, 'bad-request']);
  });

  it('to a fault of the program keeps the details to the log', async () => {
    const app = openApp();
    const { id } = await app.importSmall();
    app.db.exec('DROP TABLE edit');
    const answer = await app.send('patch', `/api/projects/${id}/settings`, { revision: 1, kerfMm: 1 });
    expect(answer.status).toBe(500);
    expect(JSON.stringify(answer.body)).not.toMatch(/edit|table|SQL/i);
  });
});

describe('the screens', () => {
  function clientFolder(files: Readonly<Record<string, string>>): string {
    const folder = mkdtempSync(join(tmpdir(), 'plywright-client-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
    return folder;
  }

  it('are served from their folder, and nothing outside it', async () => {
    const app = openApp({ clientFolder: clientFolder({ 'index.html': '<p>parts</p>', 'app.js': '1' }) });
    const page = await request(app.express).get('/');
    expect([page.status, page.text]).toEqual([200, '<p>parts</p>']);
    expect(page.headers['content-type']).toContain('text/html');
    expect((await request(app.express).get('/app.js')).status).toBe(200);
    expect((await request(app.express).get('/%2e%2e/%2e%2e/etc/passwd')).status).toBe(404);
    expect((await request(app.express).get('/absent.js')).status).toBe(404);
  });

  it('that are not built yet say how to build them', async () => {
    const answer = await request(openApp({ clientFolder: clientFolder({}) }).express).get('/');
    expect([answer.status, answer.text]).toEqual([503, expect.stringContaining('npm run build')]);
  });
});
