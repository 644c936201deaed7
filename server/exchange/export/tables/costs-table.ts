import type { Plan } from '../../../planning/plan-output.ts';
import type { ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';

interface Row {
  readonly name: string;
  readonly minor: number | null;
  readonly unpriced: number | null;
}

/** What the project costs by category, then before tax, tax and in all. While lines lack a price, sums are at least. */
export function costsTable(input: ProjectInput, { buy }: Plan): ExportTable {
  const { text, count, money } = columnMakers(input.settings);
  const { taxPercent } = input.settings;
  return exportTable<Row>(
    'costs',
    'Costs',
    [
      text('Cost', 28, ({ name }) => name),
      money('Planned', ({ minor }) => minor),
      count('Lines without a price', ({ unpriced }) => unpriced),
    ],
    [
      ...buy.categories.map(({ id, planned, unpricedLines }) => ({
        name: id,
        minor: planned.value,
        unpriced: unpricedLines.value,
      })),
      { name: 'all, before tax', minor: buy.netMinor.value, unpriced: buy.unpricedLines.value },
      {
        name: taxPercent === null ? 'tax (not set)' : `tax, ${taxPercent} %`,
        minor: taxPercent === null ? null : buy.taxMinor.value,
        unpriced: null,
      },
      {
        name: 'all, with tax',
        minor: taxPercent === null ? null : buy.totalMinor.value,
        unpriced: taxPercent === null ? null : buy.unpricedLines.value,
      },
    ],
  );
}
