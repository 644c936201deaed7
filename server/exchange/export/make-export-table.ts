import type { BuyingPlan } from '../../planning/buying/buying-plan.ts';
import type { BuyingCalendar } from '../../planning/buying/dates/needed-by.ts';
import type { LedgerPlan } from '../../planning/ledger/ledger-plan.ts';
import type { Plan } from '../../planning/plan-output.ts';
import type { ProjectInput } from '../../planning/project-input.ts';
import type { ExportTable, ExportTableName } from './export-table.ts';
import { bandingRollsTable } from './tables/banding-rolls-table.ts';
import { bandingStripsTable } from './tables/banding-strips-table.ts';
import { buyListTable } from './tables/buy-list-table.ts';
import { coatCalendarTable } from './tables/coat-calendar-table.ts';
import { costsTable } from './tables/costs-table.ts';
import { cutListTable } from './tables/cut-list-table.ts';
import { finishCoatsTable } from './tables/finish-coats-table.ts';
import { ledgerTable } from './tables/ledger-table.ts';
import { namedSizesTable } from './tables/named-sizes-table.ts';
import { orderListTable } from './tables/order-list-table.ts';
import { partGroupsTable } from './tables/part-groups-table.ts';
import { partsTable } from './tables/parts-table.ts';
import { paymentsTable } from './tables/payments-table.ts';
import { problemsTable } from './tables/problems-table.ts';
import { sawCutsTable } from './tables/saw-cuts-table.ts';
import { sheetPiecesTable } from './tables/sheet-pieces-table.ts';
import { sheetsTable } from './tables/sheets-table.ts';

/** What is ordered, paid and to be done when, as of the day it is taken out. */
export interface Accounts {
  /** Null before one is worked out. */
  readonly calendar: BuyingCalendar | null;
  readonly buying: BuyingPlan;
  readonly ledger: LedgerPlan;
}

type Maker = (input: ProjectInput, plan: Plan, accounts: Accounts) => ExportTable;

const MAKERS: Readonly<Record<ExportTableName, Maker>> = {
  parts: partsTable,
  'named-sizes': namedSizesTable,
  'part-groups': partGroupsTable,
  'cut-list': cutListTable,
  sheets: sheetsTable,
  'sheet-pieces': sheetPiecesTable,
  'saw-cuts': sawCutsTable,
  'banding-strips': bandingStripsTable,
  'banding-rolls': bandingRollsTable,
  'finish-coats': finishCoatsTable,
  'coat-calendar': (input, _plan, { calendar }) => coatCalendarTable(input, calendar),
  'buy-list': buyListTable,
  costs: costsTable,
  'order-list': (input, _plan, { buying }) => orderListTable(input, buying),
  ledger: (input, _plan, { ledger }) => ledgerTable(input, ledger),
  payments: (input, _plan, { ledger }) => paymentsTable(input, ledger),
  problems: problemsTable,
};

/** One of the tables of a planned project. */
export function makeExportTable(
  name: ExportTableName,
  input: ProjectInput,
  plan: Plan,
  accounts: Accounts,
): ExportTable {
  return MAKERS[name](input, plan, accounts);
}
