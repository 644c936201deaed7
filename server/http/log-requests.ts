import type { RequestHandler } from 'express';
import type { Logger } from 'pino';

/** Logs each request when it is answered: method, path, status and milliseconds; nothing of what it holds. */
export function logRequests(log: Logger): RequestHandler {
  return (request, response, next) => {
    const start = performance.now();
    response.on('finish', () => {
      log.info(
        {
          method: request.method,
          path: request.path,
          status: response.statusCode,
          ms: Math.round(performance.now() - start),
        },
        'request',
      );
    });
    next();
  };
}
