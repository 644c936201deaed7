/** Why a request cannot be carried out as it stands; `server/http` turns each code into its status. */
export type RefusalCode =
  | 'bad-request'
  | 'not-found'
  | 'revision-stale'
  | 'nothing-to-undo'
  | 'nothing-to-redo'
  | 'in-use'
  | 'name-taken';

export interface RefusalDetail {
  /** What the sender can do about it. */
  readonly wayOut: string;
  /** Path of the offending value in the request. */
  readonly field?: string;
  /** For `revision-stale`: the revision now current. */
  readonly revision?: number;
}

/** Thrown inside a transaction, so that nothing of the request is kept. */
export class Refusal extends Error {
  readonly code: RefusalCode;
  readonly wayOut: string;
  readonly field: string | null;
  readonly revision: number | undefined;

  constructor(code: RefusalCode, message: string, detail: RefusalDetail) {
    super(message);
    this.name = 'Refusal';
    this.code = code;
    this.wayOut = detail.wayOut;
    this.field = detail.field ?? null;
    this.revision = detail.revision;
  }

  /** The same refusal with another place. */
  at(field: string): Refusal {
    const { code, message, wayOut, revision } = this;
    return new Refusal(code, message, { wayOut, field, ...(revision === undefined ? {} : { revision }) });
  }
}
