import { z } from 'zod';
import { documentSchema } from './document-schema.ts';

/** The JSON Schema (draft 2020-12) of the project document, made from the schema that reads it. */
export function documentJsonSchema(): object {
  return z.toJSONSchema(documentSchema, { target: 'draft-2020-12', io: 'input', unrepresentable: 'any' });
}
