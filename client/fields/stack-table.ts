import './fields.css';
import { html, nothing, type TemplateResult } from 'lit-html';

export type Columns = readonly (readonly [head: string, kind?: 'number' | 'wide' | 'acts'])[];

/**
 * A table that becomes one card per row on a narrow screen. Roles are written out, because the cards' layout would
 * otherwise take them away; each cell carries its column's name for the card.
 */
export function stackTable(
  label: string,
  columns: Columns,
  rows: unknown,
  options: { readonly foot?: unknown; readonly list?: string; readonly extraClass?: string } = {},
): TemplateResult {
  return html`<table
    class="table stack ${options.extraClass ?? ''}"
    role="table"
    aria-label=${label}
    data-list=${options.list ?? nothing}
    tabindex=${options.list === undefined ? nothing : '-1'}
  >
    <thead role="rowgroup">
      <tr role="row">
        ${columns.map(
          ([head, kind]) =>
            html`<th role="columnheader" scope="col" class=${kind ?? ''}>
              ${kind === 'acts' ? html`<span class="visually-hidden">${head}</span>` : head}
            </th>`,
        )}
      </tr>
    </thead>
    <tbody role="rowgroup">
      ${rows}
    </tbody>
    ${options.foot === undefined ? nothing : html`<tfoot role="rowgroup">${options.foot}</tfoot>`}
  </table>`;
}

/** One cell of such a table. `head` is shown above it on a card. */
export function stackCell(
  head: string,
  content: unknown,
  kind: 'number' | 'wide' | 'acts' | 'lead' | '' = '',
): TemplateResult {
  return html`<td role="cell" class=${kind} data-head=${head}>${content}</td>`;
}
