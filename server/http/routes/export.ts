import { z } from 'zod';
import { exportFileName } from '../../exchange/export/export-file-name.ts';
import { EXPORT_TABLES } from '../../exchange/export/export-table.ts';
import { makeExportTable } from '../../exchange/export/make-export-table.ts';
import { writeCsv } from '../../exchange/export/write-csv.ts';
import { writeWorkbook } from '../../exchange/export/write-workbook.ts';
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
    async handle({ params }, { plans }, response) {
      const { input, plan } = plans.current(Number(params.id));
      const workbook = await writeWorkbook(EXPORT_TABLES.map((table) => makeExportTable(table, input, plan)));
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
    handle({ params }, { plans }, response) {
      const { input, plan } = plans.current(Number(params.id));
      const table = makeExportTable(params.table, input, plan);
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
    async handle({ params }, { plans }, response) {
      const { input, plan } = plans.current(Number(params.id));
      const table = makeExportTable(params.table, input, plan);
      const name = exportFileName(input.settings.name, table.title.toLowerCase(), 'xlsx');
      response
        .attachment(name)
        .type(XLSX)
        .send(await writeWorkbook([table]));
    },
  }),
];
