import type { Express } from 'express';
import request, { type Response } from 'supertest';

/** Sends a body as it stands, which need not be JSON though it says so. */
export async function fetchRaw(
  app: Express,
  path: string,
  body: string,
  method: 'post' | 'patch' = 'patch',
): Promise<Response> {
  return await request(app)[method](path).set('Content-Type', 'application/json').send(body);
}
