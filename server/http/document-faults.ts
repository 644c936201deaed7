import type { Problem } from '../planning/problem.ts';
import type { Fault } from './request-faults.ts';

/** A project document that cannot be read, with its located problems. */
export class DocumentFaults extends Error {
  readonly wayOut: string;
  readonly faults: readonly Fault[];

  constructor(problems: readonly Problem[]) {
    super(problems[0]?.message ?? 'The project document is not readable.');
    this.name = 'DocumentFaults';
    this.wayOut = problems[0]?.wayOut ?? 'Compare it with GET /api/schema.';
    this.faults = problems.map(({ at, message }) => ({
      field: [at.table, at.id, at.field].filter((step) => step !== null).join('.'),
      message,
    }));
  }
}
