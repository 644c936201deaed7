import type { Plan } from '../../../planning/plan-output.ts';
import type { NamedSize, ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';

/** The named sizes: as typed, and what each comes to. */
export function namedSizesTable(input: ProjectInput, plan: Plan): ExportTable {
  const { text, length } = columnMakers(input.settings);
  const values = new Map(plan.sizes.map(({ id, valueMm }) => [id, valueMm.value]));
  return exportTable<NamedSize>(
    'named-sizes',
    'Named sizes',
    [
      text('Name', 24, ({ name }) => name),
      text('As typed', 24, ({ value }) => value),
      length('Value', ({ id }) => values.get(id)),
      text('Note', 30, ({ note }) => note),
    ],
    input.sizes,
  );
}
