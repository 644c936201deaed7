import type { z } from 'zod';
import { RequestFaults } from './request-faults.ts';

/** What a schema reads from a part of a request. Throws RequestFaults with every fault located. */
export function parseRequest<Schema extends z.ZodType>(
  schema: Schema,
  value: unknown,
  code: 'bad-request' | 'not-found',
): z.output<Schema> {
  const result = schema.safeParse(value);
  if (!result.success) throw new RequestFaults(result.error, value, code);
  return result.data;
}
