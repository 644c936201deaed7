import type { BuyingPlan } from '../../planning/buying/buying-plan.ts';
import type { LedgerPlan } from '../../planning/ledger/ledger-plan.ts';
import type { Plan } from '../../planning/plan-output.ts';
import type { ProjectInput } from '../../planning/project-input.ts';
import type { ExportTable, ExportTableName } from './export-table.ts';
import { bandingRollsTable } from './tables/banding-rolls-table.ts';
import { bandingStripsTable } from './tables/banding-strips-table.ts';
import { buyListTable } from './tables/buy-list-table.ts';
import { costsTable } from './tables/costs-table.ts';
import { cutListTable } from './tables/cut-list-table.ts';
import { finishCoatsTable } from './tables/finish-coats-table.ts';
import { ledgerTable } from './tables/ledger-table.ts';
import { orderListTable } from './tables/order-list-table.ts';
import { partsTable } from './tables/parts-table.ts';
import { paymentsTable } from './tables/payments-table.ts';
import { problemsTable } from './tables/problems-table.ts';

/** What is ordered and paid, as of the day it is taken out. */
export interface Accounts {
  readonly buying: BuyingPlan;
  readonly ledger: LedgerPlan;
}

type Maker = (input: ProjectInput, plan: Plan, accounts: Accounts) => ExportTable;

const MAKERS: Readonly<Record<ExportTableName, Maker>> = {
  parts: partsTable,
  'cut-list': cutListTable,
  'banding-strips': bandingStripsTable,
  'banding-rolls': bandingRollsTable,
  'finish-coats': finishCoatsTable,
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
