import type { Problem, ProblemPlace } from '../../planning/problem.ts';

/** A problem that keeps a document from being read. */
export function documentProblem(at: ProblemPlace, message: string, wayOut: string): Problem {
  return { code: 'document-unreadable', severity: 'error', at, message, wayOut };
}
