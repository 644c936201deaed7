import { z } from 'zod';

/**
 * A schema of the texts of a union type. They are given as keys, so that one left out, or one too many, does not
 * compile.
 */
export function oneOf<Text extends string>(texts: Readonly<Record<Text, true>>) {
  return z.enum(Object.keys(texts) as Text[]);
}
