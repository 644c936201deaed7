import { html, nothing, type TemplateResult } from 'lit-html';
import { columnName } from '../../../grid/grid-column.ts';
import { icon } from '../../../shell/icons.ts';
import type { PartBook } from '../part-book.ts';
import type { PartColumn } from '../part-column-kinds.ts';
import type { PartsSheet } from '../parts-sheet.ts';
import {
  FILTER_FIELDS,
  type FilterField,
  withFilter,
  withoutFilters,
  withoutSort,
} from '../view/list-view.ts';
import { valueName } from '../view/value-name.ts';

/** A filter's chip names this many values and counts the others. */
const VALUES_NAMED = 2;

/**
 * What is shown of the list and in which order, when that is not all of it as it stands; each chip takes itself back.
 * A search alone is told by its own box.
 */
export function renderViewBar(sheet: PartsSheet): TemplateResult | typeof nothing {
  const { list, columns } = sheet;
  const view = list.view();
  const { all, matching, kept } = list.counts();
  const filters = Object.keys(view.filters).length > 0;
  if (!filters && kept === 0 && view.sort === null) return nothing;
  /** What was pressed may be gone with the press; then the keyboard goes on in the list. */
  const press = (act: () => void) => (): void => {
    act();
    // After the page has been drawn anew, which is put off in the same way.
    queueMicrotask(() => {
      if (document.activeElement === document.body) sheet.takeFocus();
    });
  };
  const columnAt = (id: string): PartColumn | undefined => columns.columns.find((column) => column.id === id);
  return html`<div class="view-bar" role="group" aria-label="What is shown of the list">
    ${
      filters || kept > 0
        ? html`<span class="view-words"
            ><b>Filtered</b>: ${matching} of ${all} parts${kept === 0 ? nothing : html`, and ${kept} just edited`}</span
          >
          ${FILTER_FIELDS.map((field) => {
            const values = view.filters[field];
            const column = columnAt(field);
            if (values === undefined || column === undefined) return nothing;
            const name = columnName(column);
            return chip(
              `${name}: ${valuesText(field, values, sheet.book())}`,
              `Show every ${name}`,
              press(() => list.change((now) => withFilter(now, field, null))),
            );
          })}
          <button class="button plain" @click=${press(() => list.change(withoutFilters))}>Show all parts</button>`
        : nothing
    }
    ${view.sort === null ? nothing : sortWords(sheet, columnAt(view.sort.columnId), view.sort.direction, press)}
  </div>`;
}

function sortWords(
  sheet: PartsSheet,
  column: PartColumn | undefined,
  direction: 'up' | 'down',
  press: (act: () => void) => () => void,
): TemplateResult | typeof nothing {
  if (column === undefined) return nothing;
  return html`
    ${chip(
      html`${icon(direction)} sorted by ${columnName(column)}`,
      'Back to list order',
      press(() => sheet.list.change(withoutSort)),
    )}
    <button
      class="button plain"
      title="Makes the order shown the order of the list; Ctrl+Z takes it back"
      @click=${() => void sheet.keepThisOrder().then(press(() => undefined))}
    >
      Keep this order
    </button>
  `;
}

function chip(words: string | TemplateResult, does: string, act: () => void): TemplateResult {
  return html`<span class="chip view-chip">
    ${words}
    <button class="chip-close" aria-label=${does} title=${does} @click=${act}>${icon('close')}</button>
  </span>`;
}

function valuesText(field: FilterField, values: ReadonlySet<string>, book: PartBook): string {
  const names = [...values].map((value) => valueName(field, value, book));
  if (names.length === 0) return 'none';
  const more = names.length - VALUES_NAMED;
  return `${names.slice(0, VALUES_NAMED).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}
