import type { Figure } from '../../../planning/figure.ts';
import type { LedgerHeading, LedgerPlan } from '../../../planning/ledger/ledger-plan.ts';
import type { ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';

type Row = { readonly name: string } & Partial<Record<keyof LedgerHeading, Figure | string>>;

/** Budget, planned, ordered, paid and forecast by heading, with tax; below them what the whole comes to. */
export function ledgerTable(input: ProjectInput, ledger: LedgerPlan): ExportTable {
  const { text, money } = columnMakers(input.settings);
  const column = (heading: string, field: Exclude<keyof LedgerHeading, 'id'>) =>
    money<Row>(heading, (row) => {
      const figure = row[field];
      return typeof figure === 'object' ? figure.value : null;
    });
  const whole = (name: string, forecast: Figure): Row => ({ name, forecast });
  return exportTable<Row>(
    'ledger',
    'Ledger',
    [
      text('Heading', 28, ({ name }) => name),
      column('Budget', 'budget'),
      column('Planned', 'planned'),
      column('Ordered', 'ordered'),
      column('Paid', 'paid'),
      column('Open', 'open'),
      column('To order', 'toOrder'),
      column('Forecast', 'forecast'),
      column('Left of budget', 'left'),
    ],
    [
      ...ledger.headings.map(({ id, ...figures }): Row => ({ name: id, ...figures })),
      { name: 'all', ...ledger.totals },
      whole('contingency', ledger.contingency),
      whole('forecast with contingency', ledger.forecast),
      whole('own hours', ledger.labour),
      whole('forecast with own hours', ledger.forecastWithLabour),
      whole('ready made', ledger.readyMade),
      whole('saved by building it', ledger.saved),
      whole('saved, own hours counted', ledger.savedWithLabour),
      whole('forecast per square metre finished', ledger.perFinishM2),
    ],
  );
}
