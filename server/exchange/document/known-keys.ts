import { z } from 'zod';
import { documentSchema } from '../document-schema.ts';

/** The keys the format knows at a path of the document; empty where it holds no keys, or they are not listed. */
export function knownKeys(path: readonly PropertyKey[]): string[] {
  let schema: unknown = documentSchema;
  for (const key of path) {
    const inner = bare(schema);
    if (inner instanceof z.ZodArray) schema = inner.element;
    else if (inner instanceof z.ZodObject) schema = inner.shape[String(key)];
    else return [];
  }
  const inner = bare(schema);
  return inner instanceof z.ZodObject ? Object.keys(inner.shape) : [];
}

/** The schema under its defaults and "may be left out". */
function bare(schema: unknown): unknown {
  return schema instanceof z.ZodDefault ||
    schema instanceof z.ZodOptional ||
    schema instanceof z.ZodExactOptional ||
    schema instanceof z.ZodNullable
    ? bare(schema.unwrap())
    : schema;
}
