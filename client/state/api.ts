import type { ErrorAnswer, ErrorCode } from '../../server/http/contract.ts';

type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';

/** What the server refused, in its own words; `unreachable` when no server answered at all. */
export class ApiError extends Error {
  readonly code: ErrorCode | 'unreachable';
  readonly wayOut: string;
  readonly field: string | null;
  /** The revision now current, for `revision-stale`. */
  readonly revision: number | null;

  constructor(
    code: ErrorCode | 'unreachable',
    message: string,
    wayOut: string,
    field: string | null = null,
    revision: number | null = null,
  ) {
    super(message);
    this.name = 'ApiError';
    this.code = code;
    this.wayOut = wayOut;
    this.field = field;
    this.revision = revision;
  }
}

/** Asks the server on the same host and reads its JSON answer. Throws ApiError for anything but success. */
export async function request<Answer>(method: Method, path: string, body?: unknown): Promise<Answer> {
  return answerOf(await send(method, path, body));
}

/** Sends a file as it is. */
export async function sendFile<Answer>(path: string, file: Blob): Promise<Answer> {
  return answerOf(
    await reach(path, {
      method: 'PUT',
      headers: { accept: 'application/json', 'content-type': 'application/octet-stream' },
      body: file,
    }),
  );
}

async function answerOf<Answer>(response: Response): Promise<Answer> {
  if (response.status === 204) return undefined as Answer;
  const answer: unknown = await response.json().catch(() => null);
  if (response.ok && answer !== null) return answer as Answer;
  throw refusal(response.status, answer);
}

async function send(method: Method, path: string, body: unknown): Promise<Response> {
  const init: RequestInit = { method, headers: { accept: 'application/json' } };
  if (body !== undefined) {
    init.body = JSON.stringify(body);
    init.headers = { accept: 'application/json', 'content-type': 'application/json' };
  }
  return reach(path, init);
}

async function reach(path: string, init: RequestInit): Promise<Response> {
  try {
    return await fetch(path, init);
  } catch {
    throw new ApiError(
      'unreachable',
      'The Plywright server does not answer.',
      'Check that it is still running, then try again. What you typed is kept here until then.',
    );
  }
}

function refusal(status: number, answer: unknown): ApiError {
  if (isErrorAnswer(answer)) {
    const { code, message, wayOut, field, revision } = answer.error;
    return new ApiError(code, message, wayOut, field, revision ?? null);
  }
  return new ApiError(
    'internal',
    `The server answered with an error (${status}).`,
    'Try again; if it happens again, restart the server and look at its log.',
  );
}

function isErrorAnswer(answer: unknown): answer is ErrorAnswer {
  return (
    typeof answer === 'object' && answer !== null && typeof (answer as ErrorAnswer).error?.code === 'string'
  );
}
