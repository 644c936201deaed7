import type { Refusal } from '../dimensions/refusal.ts';
import type { Problem, ProblemCode, Severity } from '../problem.ts';
import type { PartInput } from '../project-input.ts';

/**
 * How is a fault in a cell of the part list reported? With the row and field it sits in. No units, no source.
 *
 * Example: an unreadable length of part 12 sits at parts, 12, length.
 */
export function partProblem(
  row: PartInput,
  field: keyof PartInput,
  fault: { readonly code: ProblemCode; readonly message: string; readonly wayOut: string },
  severity: Severity = 'error',
): Problem {
  const { code, message, wayOut } = fault;
  return { code, severity, at: { table: 'parts', id: row.id, field }, message, wayOut };
}

/**
 * The same for a cell that could not be read. A cell without a fault gives no problem.
 *
 * Example: a null refusal gives an empty list.
 */
export function cellProblem(row: PartInput, field: keyof PartInput, refusal: Refusal | null): Problem[] {
  return refusal === null ? [] : [partProblem(row, field, refusal)];
}
