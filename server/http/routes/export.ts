import { z } from 'zod';
import { exportFileName } from '../../exchange/export/export-file-name.ts';
import { EXPORT_TABLES, type ExportTable, type ExportTableName } from '../../exchange/export/export-table.ts';
import { makeExportTable } from '../../exchange/export/make-export-table.ts';
import { writeCsv } from '../../exchange/export/write-csv.ts';
import { writeWorkbook } from '../../exchange/export/write-workbook.ts';
import type { AppContext } from '../app-context.ts';
import { buyingCalendar } from '../buying-calendar.ts';
import { projectLedger } from '../project-ledger.ts';
import { type Route, route } from '../route.ts';
import { projectParams } from '../schemas.ts';

const CSV = 'text/csv';
const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
const tableParams = projectParams.extend({ table: z.enum(EXPORT_TABLES) });

/** The tables of a project as files to keep or to open elsewhere. */
export const exportRoutes: readonly Route[] = [
  // Before the single tables, whose names it would otherwise be taken for.
  route({
    method: 'get',
    path: '/api/projects/{id}/export/project.xlsx',
    summary: 'All tables of a project as one workbook.',
    group: 'exchange',
    params: projectParams,
    answer: z.string(),
    answerType: XLSX,
    async handle({ params }, context, response) {
      const { input, table } = tablesOf(Number(params.id), context);
      const workbook = await writeWorkbook(EXPORT_TABLES.map(table));
      response
        .attachment(exportFileName(input.settings.name, '', 'xlsx'))
        .type(XLSX)
        .send(workbook);
    },
  }),
  route({
    method: 'get',
    path: '/api/projects/{id}/export/{table}.csv',
    summary: 'One table of a project as CSV: UTF-8, comma, point, heading line.',
    group: 'exchange',
    params: tableParams,
    answer: z.string(),
    answerType: CSV,
    handle({ params }, context, response) {
      const { input, table: make } = tablesOf(Number(params.id), context);
      const table = make(params.table);
      const name = exportFileName(input.settings.name, table.title.toLowerCase(), 'csv');
      response.attachment(name).type(CSV).send(writeCsv(table));
    },
  }),
  route({
    method: 'get',
    path: '/api/projects/{id}/export/{table}.xlsx',
    summary: 'One table of a project as a workbook.',
    group: 'exchange',
    params: tableParams,
    answer: z.string(),
    answerType: XLSX,
    async handle({ params }, context, response) {
      const { input, table: make } = tablesOf(Number(params.id), context);
      const table = make(params.table);
      const name = exportFileName(input.settings.name, table.title.toLowerCase(), 'xlsx');
      response
        .attachment(name)
        .type(XLSX)
        .send(await writeWorkbook([table]));
    },
  }),
];

/** A project and what makes its tables, as of today. */
function tablesOf(projectId: number, context: AppContext) {
  const { entry, buying, ledger } = projectLedger(projectId, context);
  const { input, plan } = entry;
  const calendar = buyingCalendar(context.calendars.state(projectId));
  const table = (name: ExportTableName): ExportTable =>
    makeExportTable(name, input, plan, { buying, ledger, calendar });
  return { input, table };
}
