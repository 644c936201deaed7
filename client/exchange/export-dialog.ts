import '../fields/fields.css';
import './exchange.css';
import { html, type TemplateResult } from 'lit-html';
import type { ExportTableName } from '../../server/exchange/export/export-table.ts';
import { openDialog } from '../shell/open-dialog.ts';
import { projectPath } from '../state/project-actions.ts';
import { getState } from '../state/store.ts';

const TABLES: readonly (readonly [table: ExportTableName, name: string, holds: string])[] = [
  ['parts', 'Part list', 'as typed and as read; can be imported again'],
  ['named-sizes', 'Named sizes', 'as typed, and what each comes to'],
  ['part-groups', 'Part groups', 'sums by section and by material'],
  ['cut-list', 'Cut list', 'sizes for the saw, by material'],
  ['sheets', 'Sheets', 'what to buy of each material, and its cost'],
  ['sheet-pieces', 'Sheet pieces', 'what is cut from which sheet'],
  ['saw-cuts', 'Saw cuts', 'every cut in its order, with the fence'],
  ['banding-strips', 'Banding strips', 'every strip, with its length'],
  ['banding-rolls', 'Banding rolls', 'what is cut from which roll'],
  ['finish-coats', 'Finish coats', 'every coat, with its liquid'],
  ['coat-calendar', 'Coat calendar', 'every task, with its date and its times'],
  ['buy-list', 'Buy list', 'packs and prices, by supplier'],
  ['costs', 'Costs', 'by category, with tax'],
  ['order-list', 'Order list', 'what is still to be ordered, and every order with its deliveries'],
  ['ledger', 'Ledger', 'budget, ordered, paid and forecast, by category'],
  ['payments', 'Payments', 'every payment and refund, by date'],
  ['problems', 'Problems', 'what is wrong or doubtful, and what to do'],
];

/** Everything that can be taken out of the open project, as plain links that save a file. */
export function openExportDialog(): void {
  const { project } = getState();
  if (project === null || document.querySelector('dialog[open]') !== null) return;
  const path = (rest: string): string => projectPath(project.id, rest);
  openDialog(
    'Export',
    (close) => html`
      <div class="body export">
        <h2>Export “${project.settings.name}”</h2>
        <section class="export-whole" aria-label="The whole project">
          <div>
            ${link(path('document'), 'Project file', 'Project file (JSON)')}
            <p>Everything typed, to keep as a copy or to open on another machine.</p>
          </div>
          <div>
            ${link(path('export/project.xlsx'), 'Workbook', 'All tables as one workbook (XLSX)')}
            <p>All tables below, one sheet each.</p>
          </div>
        </section>
        <table class="table export-tables">
          <thead>
            <tr>
              <th scope="col">Table</th>
              <th scope="col" colspan="2">Save as</th>
            </tr>
          </thead>
          <tbody>
            ${TABLES.map(
              ([table, name, holds]) => html`<tr>
                <th scope="row">${name}<small>${holds}</small></th>
                <td>${link(path(`export/${table}.csv`), 'CSV', `${name} as CSV`)}</td>
                <td>${link(path(`export/${table}.xlsx`), 'XLSX', `${name} as XLSX`)}</td>
              </tr>`,
            )}
          </tbody>
        </table>
        <p class="aside-words">XLSX for a spreadsheet, CSV for other programs: commas, and a point in numbers. Sizes are in the project's unit.</p>
        <div class="actions"><button class="button" @click=${close}>Close</button></div>
      </div>
    `,
  );
}

function link(href: string, words: string, name: string): TemplateResult {
  return html`<a class="button" href=${href} download aria-label=${name}>${words}</a>`;
}
