import { Refusal } from '../../db/refusal.ts';
import type { ErrorAnswer, ErrorCode } from './contract.ts';
import { DocumentFaults } from './document-faults.ts';
import { HttpRefusal } from './http-refusal.ts';
import { RequestFaults } from './request-faults.ts';

/** The one place where a code gets its status. */
export const STATUS_OF: Readonly<Record<ErrorCode, number>> = {
  'bad-request': 400,
  'not-allowed': 403,
  'not-found': 404,
  'unknown-route': 404,
  'revision-stale': 409,
  'nothing-to-undo': 409,
  'nothing-to-redo': 409,
  'in-use': 409,
  'name-taken': 409,
  'too-large': 413,
  'type-not-allowed': 415,
  internal: 500,
};

/** Status and body for anything that was thrown. What is not known is answered without its details. */
export function errorAnswer(error: unknown): { readonly status: number; readonly body: ErrorAnswer } {
  if (error instanceof HttpRefusal) {
    const { code, message, wayOut, status } = error;
    return { status: status ?? STATUS_OF[code], body: { error: { code, message, wayOut, field: null } } };
  }
  if (error instanceof Refusal) {
    const { code, message, wayOut, field, revision } = error;
    return answer({ code, message, wayOut, field, ...(revision === undefined ? {} : { revision }) });
  }
  if (error instanceof RequestFaults) {
    const { code, message, faults } = error;
    return answer({
      code,
      message,
      wayOut: WAYS_OUT[code] ?? 'Correct the values listed and send the request again.',
      field: faults[0]?.field ?? null,
      ...(faults.length > 1 ? { faults } : {}),
    });
  }
  if (error instanceof DocumentFaults) {
    const { message, wayOut, faults } = error;
    return answer({
      code: 'bad-request',
      message,
      wayOut,
      field: faults[0]?.field ?? null,
      ...(faults.length > 1 ? { faults } : {}),
    });
  }
  return parserAnswer(error) ?? INTERNAL;
}

const WAYS_OUT: Readonly<Partial<Record<ErrorCode, string>>> = {
  'too-large': 'Shorten it, or spread it over several cells or requests.',
  'not-found': 'Check the address; the ids of projects and rows are whole numbers.',
};

const INTERNAL = answer({
  code: 'internal',
  message: 'Something went wrong inside the program. The change was not made.',
  wayOut: 'Try again; if it happens again, the log of the program says what it was.',
  field: null,
});

function answer(error: ErrorAnswer['error']): { readonly status: number; readonly body: ErrorAnswer } {
  return { status: STATUS_OF[error.code], body: { error } };
}

/** Errors of the body parser and of the router carry a `type` or a status below 500. */
function parserAnswer(error: unknown) {
  const { type, status } = error as { readonly type?: unknown; readonly status?: unknown };
  if (type === 'entity.too.large')
    return answer({
      code: 'too-large',
      message: 'The request is larger than 8 MB.',
      wayOut: 'Send it in several requests.',
      field: null,
    });
  if (type === 'entity.parse.failed')
    return answer({
      code: 'bad-request',
      message: 'The request is not readable as JSON.',
      wayOut: 'Check brackets, commas and quotes, and that all of it was sent.',
      field: null,
    });
  if (typeof status === 'number' && status >= 400 && status < 500)
    return answer({
      code: 'bad-request',
      message: 'The request cannot be read.',
      wayOut: 'Check its address, its encoding and its content type.',
      field: null,
    });
  return null;
}
