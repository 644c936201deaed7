import type { Plan } from '../../planning/plan-output.ts';
import type { ProjectInput } from '../../planning/project-input.ts';
import type { ExportTable, ExportTableName } from './export-table.ts';
import { bandingRollsTable } from './tables/banding-rolls-table.ts';
import { bandingStripsTable } from './tables/banding-strips-table.ts';
import { buyListTable } from './tables/buy-list-table.ts';
import { costsTable } from './tables/costs-table.ts';
import { cutListTable } from './tables/cut-list-table.ts';
import { finishCoatsTable } from './tables/finish-coats-table.ts';
import { partsTable } from './tables/parts-table.ts';
import { problemsTable } from './tables/problems-table.ts';

const MAKERS: Readonly<Record<ExportTableName, (input: ProjectInput, plan: Plan) => ExportTable>> = {
  parts: partsTable,
  'cut-list': cutListTable,
  'banding-strips': bandingStripsTable,
  'banding-rolls': bandingRollsTable,
  'finish-coats': finishCoatsTable,
  'buy-list': buyListTable,
  costs: costsTable,
  problems: problemsTable,
};

/** One of the tables of a planned project. */
export function makeExportTable(name: ExportTableName, input: ProjectInput, plan: Plan): ExportTable {
  return MAKERS[name](input, plan);
}
