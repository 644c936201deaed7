import { DatabaseProblem } from '../../db/database-problem.ts';

/** The DatabaseProblem that `run` throws; a run that throws nothing, or something else, fails the test. */
export function problemOf(run: () => unknown): DatabaseProblem {
  try {
    run();
  } catch (error) {
    if (error instanceof DatabaseProblem) return error;
    throw error;
  }
  throw new Error('expected a DatabaseProblem');
}
