import type { ProblemCode } from '../problem.ts';
import { QUOTED_CHARACTERS } from './constants.ts';

/** Why a text could not be read, and what its writer can do. */
export interface Refusal {
  readonly ok: false;
  readonly code: ProblemCode;
  /** One sentence with the offending text. */
  readonly message: string;
  /** One sentence. */
  readonly wayOut: string;
}

/**
 * What is answered when a text cannot be read? A refusal with its stable code. No units, no source.
 *
 * Example: `refuse('dimension-missing', 'The size is empty.', 'Type a size.')`.
 */
export function refuse(code: ProblemCode, message: string, wayOut: string): Refusal {
  return { ok: false, code, message, wayOut };
}

/**
 * How is the user's text repeated in a message? In angle quotes, so that inch marks stay readable, and cut short
 * after 40 characters. No units, no source.
 *
 * Example: `quoted('23 5/8"')` is `«23 5/8"»`.
 */
export function quoted(text: string): string {
  const characters = [...text.slice(0, 4 * QUOTED_CHARACTERS)];
  const shown =
    characters.length > QUOTED_CHARACTERS ? `${characters.slice(0, QUOTED_CHARACTERS).join('')}…` : text;
  return `«${shown}»`;
}
