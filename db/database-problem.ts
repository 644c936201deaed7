/** Why the database cannot be opened, migrated or restored, in words for the person who started the program. */
export class DatabaseProblem extends Error {
  readonly wayOut: string;

  constructor(message: string, wayOut: string, cause?: unknown) {
    super(message, { cause });
    this.name = 'DatabaseProblem';
    this.wayOut = wayOut;
  }
}
