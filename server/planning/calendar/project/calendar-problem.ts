import type { Problem, ProblemCode, ProblemTable, Severity } from '../../problem.ts';

/** A problem of one field of one row of the calendar's lists. */
export function calendarProblem(
  code: ProblemCode,
  severity: Severity,
  [table, id, field]: readonly [table: ProblemTable, id: string | null, field: string | null],
  message: string,
  wayOut: string,
): Problem {
  return { code, severity, at: { table, id, field }, message, wayOut };
}

/** As typed, shortened for a sentence. */
export function quoted(text: string): string {
  const MOST = 40;
  return `“${text.length > MOST ? `${text.slice(0, MOST)}…` : text}”`;
}
