import type { GroupPlan, Plan } from '../../../planning/plan-output.ts';
import type { ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';
import { nameBook } from '../name-book.ts';

interface Row {
  readonly by: 'section' | 'material';
  readonly name: string;
  readonly group: GroupPlan;
}

/** The part rows summed by section and by material; each part is counted once in either. */
export function partGroupsTable(input: ProjectInput, { groups }: Plan): ExportTable {
  const { text, count, run, area } = columnMakers(input.settings);
  const names = nameBook(input);
  return exportTable<Row>(
    'part-groups',
    'Part groups',
    [
      text('By', 10, ({ by }) => by),
      text('Group', 28, ({ name }) => name),
      count('Rows', ({ group }) => group.rows),
      count('Pieces', ({ group }) => group.pieces.value),
      run('Banded', ({ group }) => group.bandedM.value),
      area('Finished', ({ group }) => group.finishM2.value),
    ],
    [
      ...groups.sections.map((group): Row => ({ by: 'section', name: group.id || 'none', group })),
      ...groups.materials.map(
        (group): Row => ({ by: 'material', name: names.productFull(group.id) || 'none', group }),
      ),
    ],
  );
}
