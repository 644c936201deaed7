import type { Problem } from '../../planning/problem.ts';
import { documentProblem } from './document-problem.ts';

const WHOLE = { table: 'document', id: null, field: null } as const;

/** The JSON value that the bytes of a file hold, as UTF-8 text with or without a byte order mark; or why there is none. */
export function parseDocumentBytes(
  bytes: Uint8Array,
): { readonly ok: true; readonly json: unknown } | { readonly ok: false; readonly problem: Problem } {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return refusal('The file is not UTF-8 text.', 'Save it as JSON in UTF-8 and read it again.');
  }
  if (text.trim() === '')
    return refusal('The file is empty.', 'Give a project document, such as one of those in db/demo.');
  try {
    return { ok: true, json: JSON.parse(text) };
  } catch (error) {
    return refusal(
      `The file is not JSON: ${reason(error, text)}.`,
      'Correct it there; JSON wants double quotes, no comma before a closing bracket, and knows no NaN.',
    );
  }
}

function refusal(message: string, wayOut: string): { readonly ok: false; readonly problem: Problem } {
  return { ok: false, problem: documentProblem(WHOLE, message, wayOut) };
}

/** The engine's words, with line and column in place of a count of characters, or with the text it stumbled over. */
function reason(error: unknown, text: string): string {
  const said = (error instanceof Error ? error.message : String(error)).replace(/\s+/g, ' ');
  const position = /^(.*?) (?:in|after) JSON at position (\d+)/.exec(said);
  if (position !== null) {
    const before = text.slice(0, Number(position[2])).split('\n');
    return `${position[1]} in line ${before.length}, column ${(before.at(-1)?.length ?? 0) + 1}`;
  }
  const near = /^(.*?), ((?:\.{3})?".*) is not valid JSON$/.exec(said);
  return near === null ? said : `${near[1]} in ${near[2]}`;
}
