import { createHash, randomBytes, scryptSync, timingSafeEqual } from 'node:crypto';
import type { Request, RequestHandler, Response } from 'express';
import { z } from 'zod';
import { HttpRefusal } from './http-refusal.ts';
import { type Route, route } from './route.ts';

/**
 * The passphrase that stands before everything when the program can be reached from other machines. Whoever gives
 * it gets a cookie with a random token, good until the program ends or a month has passed.
 */

const COOKIE = 'plywright';
const SESSION_MS = 30 * 24 * 60 * 60 * 1000;
/** Wrong tries one address has before it must wait. */
const TRIES = 10;
const WAIT_MS = 10 * 60 * 1000;
const KEY_BYTES = 32;
const CALENDAR_FEED = /^\/api\/projects\/\d+\/calendar\.ics$/;

export interface Access {
  /** Sends whoever has not given the passphrase to the page that asks for it. */
  readonly guard: RequestHandler;
  readonly routes: readonly Route[];
}

function loginPage(message: string): string {
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<title>Plywright</title>
<style>:root { color-scheme: light dark } body { font: 1rem system-ui; display: grid; place-items: center; min-height: 90vh }
form { display: grid; gap: .75rem } label { display: grid; gap: .25rem } input, button { font: inherit; padding: .5rem }</style></head>
<body><main><h1>Plywright</h1><p role="alert">${message}</p>
<form method="post" action="/login"><label>Passphrase
<input type="password" name="passphrase" autocomplete="current-password" required autofocus></label>
<button>Open</button></form></main></body></html>
`;
}

/** Calendar programs cannot give a passphrase; the address they read bears a key, which its route asks for. */
function hasOwnKey({ method, path }: Request): boolean {
  return method === 'GET' && CALENDAR_FEED.test(path);
}

export function openAccess(passphrase: string, now: () => Date): Access {
  const salt = randomBytes(16);
  const key = scryptSync(passphrase, salt, KEY_BYTES);
  const sessions = new Map<string, number>();
  const wrongTries = new Map<string, { count: number; since: number }>();

  function isOpenTo(request: Request): boolean {
    const token = cookieOf(request);
    if (token === null) return false;
    const until = sessions.get(digest(token));
    return until !== undefined && until > now().getTime();
  }

  function countTry(address: string): void {
    const time = now().getTime();
    for (const [from, tries] of wrongTries) if (time - tries.since > WAIT_MS) wrongTries.delete(from);
    const tries = wrongTries.get(address) ?? { count: 0, since: time };
    if (tries.count >= TRIES)
      throw new HttpRefusal(
        'not-allowed',
        'The passphrase was wrong too often.',
        'Wait ten minutes and try again.',
        429,
      );
    wrongTries.set(address, { ...tries, count: tries.count + 1 });
  }

  return {
    guard(request, response, next) {
      if (request.path === '/login' || hasOwnKey(request) || isOpenTo(request)) next();
      else if (request.method === 'GET' && !request.path.startsWith('/api/'))
        response.redirect(303, '/login');
      else
        throw new HttpRefusal(
          'not-allowed',
          'The passphrase has not been given.',
          'Open the page /login and give it there.',
          401,
        );
    },
    routes: accessRoutes((address, given) => {
      countTry(address);
      if (!timingSafeEqual(scryptSync(given, salt, KEY_BYTES), key))
        throw new HttpRefusal('not-allowed', 'That is not the passphrase.', 'Try again.', 401);
      wrongTries.delete(address);
      const token = randomBytes(KEY_BYTES).toString('base64url');
      sessions.set(digest(token), now().getTime() + SESSION_MS);
      return token;
    }),
  };
}

/** The routes as they are mounted, and as they are documented where no passphrase is set. */
export function accessRoutes(open: (address: string, passphrase: string) => string): readonly Route[] {
  return [
    route({
      method: 'get',
      path: '/login',
      summary: 'The page that asks for the passphrase; only where one is set.',
      group: 'access',
      answer: z.string(),
      answerType: 'text/html',
      handle(_input, _context, response) {
        response.type('html').send(loginPage(''));
      },
    }),
    route({
      method: 'post',
      path: '/login',
      summary: 'Give the passphrase; the answer sets a cookie and leads to the first page.',
      group: 'access',
      body: z.strictObject({ passphrase: z.string().max(1000) }),
      bodyType: 'application/x-www-form-urlencoded',
      status: 303,
      answer: null,
      refusals: ['not-allowed'],
      handle({ body }, _context, response) {
        const token = tryToOpen(open, body.passphrase, response);
        if (token === null) return;
        response.cookie(COOKIE, token, { httpOnly: true, sameSite: 'strict', path: '/', maxAge: SESSION_MS });
        response.redirect(303, '/');
      },
    }),
  ];
}

/** The token; or null when the passphrase is wrong and a browser has been shown the page again. */
function tryToOpen(
  open: (address: string, passphrase: string) => string,
  passphrase: string,
  response: Response,
): string | null {
  try {
    return open(response.req.socket.remoteAddress ?? '', passphrase);
  } catch (error) {
    if (!(error instanceof HttpRefusal) || response.req.accepts(['json', 'html']) !== 'html') throw error;
    response
      .status(error.status ?? 401)
      .type('html')
      .send(loginPage(`${error.message} ${error.wayOut}`));
    return null;
  }
}

function cookieOf(request: Request): string | null {
  const pair = (request.headers.cookie ?? '')
    .split(';')
    .map((part) => part.trim())
    .find((part) => part.startsWith(`${COOKIE}=`));
  return pair === undefined ? null : pair.slice(COOKIE.length + 1);
}

function digest(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}
