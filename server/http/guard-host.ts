import type { RequestHandler } from 'express';
import { HttpRefusal } from './http-refusal.ts';

/** The names under which a machine calls itself. */
const OWN_NAMES = ['localhost', '127.0.0.1', '[::1]'];

/**
 * Turns away what a page of another site could send. A site may point a name of its own at this machine, or post to
 * this machine's address from its page; the browser then says so in the Host and Origin headers.
 */
export function guardHost(allowedHosts: readonly string[]): RequestHandler {
  const allowed = new Set([...OWN_NAMES, ...allowedHosts.map((host) => host.toLowerCase())]);
  return (request, _response, next) => {
    const { host, origin } = request.headers;
    if (host === undefined || !allowed.has(hostName(host)))
      throw new HttpRefusal(
        'not-allowed',
        `The name “${(host ?? '').slice(0, 100)}” is not one this program answers to.`,
        'Open it as localhost, or name the host in PLYWRIGHT_HOSTS.',
      );
    const fromElsewhere =
      origin === undefined
        ? request.headers['sec-fetch-site'] === 'cross-site' && request.method !== 'GET'
        : origin.toLowerCase().replace(/^https?:\/\//, '') !== host.toLowerCase();
    if (fromElsewhere)
      throw new HttpRefusal(
        'not-allowed',
        'The request comes from a page of another site.',
        'Use the page that this program serves.',
      );
    next();
  };
}

/** The name in a Host header, without the port. */
function hostName(host: string): string {
  return host.toLowerCase().replace(/:\d+$/, '');
}
