import { TABLE_WORDS } from '../../../planning/display/table-words.ts';
import type { Plan } from '../../../planning/plan-output.ts';
import type { Problem, ProblemPlace, ProblemTable } from '../../../planning/problem.ts';
import type { ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';

/** Everything the plan finds wrong or doubtful, with where it is and what to do. */
export function problemsTable(input: ProjectInput, { problems }: Plan): ExportTable {
  const { text } = columnMakers(input.settings);
  const nameOf = placeNames(input);
  return exportTable<Problem>(
    'problems',
    'Problems',
    [
      text('Severity', 10, ({ severity }) => severity),
      text('In', 18, ({ at }) => TABLE_WORDS[at.table]),
      text('Row', 28, ({ at }) => nameOf(at)),
      text('Field', 16, ({ at }) => at.field),
      text('Problem', 60, ({ message }) => message),
      text('What to do', 60, ({ wayOut }) => wayOut),
      text('Code', 26, ({ code }) => code),
    ],
    problems,
  );
}

/** The name of the row a problem sits in; its place in the list where it has none. */
function placeNames(input: ProjectInput): (place: ProblemPlace) => string | null {
  const lists: Readonly<
    Partial<Record<ProblemTable, readonly { readonly id: string; readonly name?: string }[]>>
  > = {
    ...input,
    steps: input.recipes.flatMap(({ name, steps }) => steps.map(({ id }) => ({ id, name }))),
    components: input.blends.flatMap(({ name, components }) => components.map(({ id }) => ({ id, name }))),
    products: input.catalogue.products,
    settings: [],
  };
  return ({ table, id }) => {
    const rows = lists[table] ?? [];
    const index = rows.findIndex((row) => row.id === id);
    if (index < 0) return id;
    const name = rows[index]?.name;
    return name === undefined || name === '' ? String(index + 1) : name;
  };
}
