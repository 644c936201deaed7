import { z } from 'zod';
import { documentSchema } from './document-schema.ts';

/** The published schema of the document, as JSON Schema 2020-12: what may be given, with the defaults. */
export function documentJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(documentSchema, { io: 'input' }) as Record<string, unknown>;
}
