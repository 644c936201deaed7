import type { MaterialPlan, Plan } from '../../../planning/plan-output.ts';
import type { ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';
import { nameBook } from '../name-book.ts';

/** What of each sheet and board is needed, and how near the plan comes to the best there can be. */
export function sheetsTable(input: ProjectInput, plan: Plan): ExportTable {
  const { text, count, length, run, area, money } = columnMakers(input.settings);
  const names = nameBook(input);
  return exportTable<MaterialPlan>(
    'sheets',
    'Sheets',
    [
      text('Material', 28, ({ id }) => names.productFull(id)),
      text('Kind', 8, ({ kind }) => kind),
      length('Thickness', ({ thicknessMm }) => thicknessMm.value),
      area('Parts', ({ netM2 }) => netM2.value),
      run('Parts', ({ netM }) => netM.value),
      count('To buy', ({ stocks }) => stocks.value),
      count('Fewest possible', ({ boundStocks }) => boundStocks.value),
      text('Proven best', 12, ({ proven }) => (proven ? 'yes' : 'no')),
      money('Cost', ({ costMinor }) => costMinor.value),
    ],
    plan.materials,
  );
}
