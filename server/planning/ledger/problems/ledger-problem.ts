import type { Problem, ProblemCode, ProblemTable, Severity } from '../../problem.ts';

/** A problem of a cell of the ledger: its code, how bad it is, where it is, what is wrong and what to do. Definition. */
export function ledgerProblem(
  code: ProblemCode,
  severity: Severity,
  [table, id, field]: readonly [ProblemTable, string, string | null],
  message: string,
  wayOut: string,
): Problem {
  return { code, severity, at: { table, id, field }, message, wayOut };
}
