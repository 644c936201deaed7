/** Why the program cannot start, in words for the person who started it. */
export class StartProblem extends Error {
  readonly wayOut: string;

  constructor(message: string, wayOut: string) {
    super(message);
    this.name = 'StartProblem';
    this.wayOut = wayOut;
  }
}
