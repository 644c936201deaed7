import { z } from 'zod';
import { type Route, route } from '../route.ts';
import { VERSION } from '../version.ts';

/** About the program itself. */
export const programRoutes: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/health',
    summary: 'Is the program there?',
    group: 'program',
    answer: z.strictObject({ ok: z.literal(true), version: z.string() }),
    handle: () => ({ ok: true, version: VERSION }),
  }),
];
