import request from 'supertest';
import { describe, expect, it } from 'vitest';
import { openApp } from './open-app.ts';

const passphrase = 'four grey planes';

function locked(now: () => Date = () => new Date()) {
  const { express } = openApp({ passphrase, now });
  const login = (given: string) => request(express).post('/login').type('form').send({ passphrase: given });
  const read = (cookie?: string) => {
    const asked = request(express).get('/api/projects');
    return cookie === undefined ? asked : asked.set('Cookie', cookie);
  };
  return { express, login, read };
}

describe('with a passphrase set', () => {
  it('nothing is shown or changed before it is given', async () => {
    const { express, read } = locked();
    const answer = await read();
    expect([answer.status, answer.body.error.code]).toEqual([401, 'not-allowed']);
    expect(
      (await request(express).post('/api/projects').send({ name: 'x', units: 'us', currency: 'USD' })).status,
    ).toBe(401);
    expect((await request(express).get('/api/openapi.json')).status).toBe(401);
    expect((await read('plywright=')).status).toBe(401);
    expect((await read('plywright=AAAA')).status).toBe(401);
    const page = await request(express).get('/');
    expect([page.status, page.headers.location]).toEqual([303, '/login']);
    expect((await request(express).get('/login')).text).toContain('type="password"');
  });

  it('whoever gives it gets a cookie that scripts and other sites cannot use', async () => {
    const { login, read } = locked();
    const answer = await login(passphrase);
    expect([answer.status, answer.headers.location]).toEqual([303, '/']);
    const cookie = answer.headers['set-cookie']?.[0] ?? '';
    expect(cookie).toMatch(
      /^plywright=[\w-]{43}; Max-Age=2592000; Path=\/; Expires=[^;]+; HttpOnly; SameSite=Strict$/,
    );
    expect((await read(`other=1; ${cookie.split(';')[0]}`)).status).toBe(200);
  });

  it('the cookie is good for a month', async () => {
    let time = Date.UTC(2026, 0, 1);
    const { login, read } = locked(() => new Date(time));
    const cookie = ((await login(passphrase)).headers['set-cookie']?.[0] ?? '').split(';')[0];
    time += 29 * 24 * 3600 * 1000;
    expect((await read(cookie)).status).toBe(200);
    time += 2 * 24 * 3600 * 1000;
    expect((await read(cookie)).status).toBe(401);
  });

  it('a wrong one opens nothing, and after ten wrong ones even the right one has to wait', async () => {
    let time = Date.UTC(2026, 0, 1);
    const { login } = locked(() => new Date(time));
    for (const wrong of ['', 'four grey plane', 'Four grey planes', ...Array(7).fill('x')]) {
      const answer = await login(wrong);
      expect([answer.status, answer.headers['set-cookie']]).toEqual([401, undefined]);
    }
    expect((await login(passphrase)).status).toBe(429);
    time += 11 * 60 * 1000;
    expect((await login(passphrase)).status).toBe(303);
  });

  it('a wrong one typed into the page brings the page back with a word about it', async () => {
    const { login } = locked();
    const answer = await login('x').set('Accept', 'text/html,application/xhtml+xml,*/*;q=0.8');
    expect([answer.status, answer.headers['content-type']]).toEqual([401, 'text/html; charset=utf-8']);
    expect(answer.text).toContain('That is not the passphrase. Try again.');
    expect(answer.text).toContain('type="password"');
  });

  it('a request without the field is refused as malformed', async () => {
    const { express } = locked();
    const answer = await request(express).post('/login').type('form').send({ word: 'x' });
    expect([answer.status, answer.body.error.code]).toEqual([400, 'bad-request']);
  });
});
