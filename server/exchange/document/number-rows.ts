import type { Problem, ProblemTable } from '../../planning/problem.ts';
import { documentProblem } from './document-problem.ts';

/** A row as it may be given: its id is text, a number, or left out. */
type GivenRow = { readonly id?: string | number };

/**
 * The rows of one table with their ids as text, and a problem for every id that two rows have. A row without an id
 * is called by its 1-based position in the table; steps and components count on through all recipes and blends.
 */
export function numberRows<Row extends GivenRow>(
  table: ProblemTable,
  given: readonly Row[],
): {
  readonly rows: readonly (Omit<Row, 'id'> & { readonly id: string })[];
  readonly problems: readonly Problem[];
} {
  const rows = given.map((row, index) => ({ ...row, id: String(row.id ?? index + 1) }));
  const owners = new Map<string, number>();
  const problems = rows.flatMap(({ id }, index) => {
    const owner = owners.get(id);
    if (owner !== undefined) return [idTwice(table, id, [owner, index], given)];
    owners.set(id, index);
    return [];
  });
  return { rows, problems };
}

function idTwice(
  table: ProblemTable,
  id: string,
  [first, second]: readonly [number, number],
  given: readonly GivenRow[],
): Problem {
  const byPosition = given[first]?.id === undefined || given[second]?.id === undefined;
  return documentProblem(
    { table, id, field: 'id' },
    `Rows ${first + 1} and ${second + 1} of ${table} both have the id "${id}"${byPosition ? ', one of them by its position' : ''}.`,
    byPosition ? 'Give every row of this list an id, or none of them.' : 'Give each row an id of its own.',
  );
}
