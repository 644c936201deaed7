import type { ErrorCode } from './contract.ts';

/** A request that the HTTP layer itself turns away, before or beside the database. */
export class HttpRefusal extends Error {
  readonly code: ErrorCode;
  readonly wayOut: string;
  /** Where it is another than the code's own. */
  readonly status: number | undefined;

  constructor(code: ErrorCode, message: string, wayOut: string, status?: number) {
    super(message);
    this.name = 'HttpRefusal';
    this.code = code;
    this.wayOut = wayOut;
    this.status = status;
  }
}
