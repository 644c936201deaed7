import { html, nothing, type TemplateResult } from 'lit-html';
import type { PreviewCell, PreviewRow } from '../../server/http/contract.ts';
import { finishWords, productWords } from './import-choices.ts';
import { type ImportActions, type ImportDraft, shownRows } from './import-draft.ts';
import {
  cellOf,
  FIELD_NAMES,
  hasNoSize,
  noteKey,
  PREVIEW_FIELDS,
  type PreviewField,
  rowNotes,
  type SharedNote,
  sharedNotes,
} from './preview-notes.ts';

/** Rows drawn; a long list is imported whole all the same. */
const ROWS_SHOWN = 200;
const ALWAYS_SHOWN: readonly PreviewField[] = ['name', 'quantity', 'length', 'width', 'material'];
/** What a cell holds where nobody said anything; a column of nothing else is not drawn. */
const ORDINARY: Readonly<Partial<Record<PreviewField, string>>> = {
  section: '',
  note: '',
  showFace: '',
  backFace: '',
  grain: 'along',
  front: 'hidden',
  back: 'hidden',
  left: 'hidden',
  right: 'hidden',
  shape: 'rectangle',
  frontLeft: '',
  frontRight: '',
  backLeft: '',
  backRight: '',
};

let noted: { readonly rows: readonly PreviewRow[]; readonly shared: readonly SharedNote[] } | null = null;

/** The parts as they will stand in the part list, with doubtful and unreadable cells marked and explained. */
export function renderPreview(draft: ImportDraft, acts: ImportActions): TemplateResult {
  const all = draft.preview?.rows ?? [];
  if (noted?.rows !== all) noted = { rows: all, shared: sharedNotes(all) };
  const { shared } = noted;
  const said = new Set(shared.map(({ key }) => key));
  const rows = shownRows(draft);
  const fields = PREVIEW_FIELDS.filter(
    (field) =>
      ALWAYS_SHOWN.includes(field) ||
      all.some((row) => cellOf(row, field).text !== ORDINARY[field] || cellOf(row, field).reason !== null),
  );
  return html`<section class="import-preview" aria-labelledby="import-preview-title">
    <div class="import-preview-head">
      <h3 id="import-preview-title">Parts</h3>
      ${renderToggles(draft, acts)}
    </div>
    ${renderShared(shared)}
    <div class="import-scroll" role="region" aria-label="Parts to import" tabindex="0">
      <table class="table import-table">
        <thead>
          <tr>
            <th scope="col"><span class="visually-hidden">Take it</span></th>
            <th scope="col" class="number">Row</th>
            ${fields.map((field) => html`<th scope="col" class=${classOf(field)}>${FIELD_NAMES[field]}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.slice(0, ROWS_SHOWN).map(([index, row]) => renderRow(row, index, fields, said, draft, acts))}
        </tbody>
      </table>
    </div>
    ${
      rows.length > ROWS_SHOWN
        ? html`<p class="import-more">The first ${ROWS_SHOWN} of ${rows.length} rows are shown; all of them are imported.</p>`
        : nothing
    }
  </section>`;
}

function renderToggles(draft: ImportDraft, acts: ImportActions): TemplateResult {
  const rows = draft.preview?.rows ?? [];
  const sizeless = [...rows.entries()].filter(([, row]) => hasNoSize(row)).map(([index]) => index);
  const { doubt, refused } = draft.preview?.counts.rows ?? { doubt: 0, refused: 0 };
  const checked = (event: Event): boolean => (event.currentTarget as HTMLInputElement).checked;
  return html`<div class="import-toggles">
    ${
      sizeless.length > 0 && sizeless.length < rows.length
        ? html`<label class="check"
            ><input
              type="checkbox"
              .checked=${sizeless.every((index) => draft.leftOut.has(index))}
              @change=${(event: Event) => acts.leaveOutSizeless(checked(event))}
            />
            leave out ${sizeless.length === 1 ? 'the row' : `the ${sizeless.length} rows`} without any size</label
          >`
        : nothing
    }
    ${
      doubt + refused > 0 && doubt + refused < rows.length
        ? html`<label class="check"
            ><input type="checkbox" .checked=${draft.onlyMarked} @change=${(event: Event) => acts.showOnlyMarked(checked(event))} />
            show only rows to look at</label
          >`
        : nothing
    }
  </div>`;
}

function renderShared(notes: readonly SharedNote[]): TemplateResult | typeof nothing {
  if (notes.length === 0) return nothing;
  return html`<ul class="import-shared">
    ${notes.map(
      ({ fields, state, reason, rows }) =>
        html`<li>${mark(state)}<span><b>${fieldWords(fields)}, ${rows} rows:</b> ${reason}</span></li>`,
    )}
  </ul>`;
}

function renderRow(
  row: PreviewRow,
  index: number,
  fields: readonly PreviewField[],
  said: ReadonlySet<string>,
  draft: ImportDraft,
  acts: ImportActions,
): TemplateResult {
  const out = draft.leftOut.has(index);
  const notes = out ? [] : rowNotes(row).filter((note) => !said.has(noteKey(note)));
  const name = row.name.text === '' ? `row ${row.line}` : row.name.text;
  return html`<tr class=${out ? 'out' : ''}>
      <td class="import-take">
        <input
          type="checkbox"
          aria-label="Take ${name}"
          .checked=${!out}
          @change=${(event: Event) => acts.leaveOut(index, !(event.currentTarget as HTMLInputElement).checked)}
        />
      </td>
      <td class="number import-line">${row.line}</td>
      ${fields.map((field) => renderCell(cellOf(row, field), field))}
    </tr>
    ${
      notes.length === 0
        ? nothing
        : html`<tr class="import-notes">
          <td></td>
          <td></td>
          <td colspan=${fields.length}>
            <div>${notes.map(({ fields: those, state, reason }) => html`<p data-state=${state}><b>${fieldWords(those)}:</b> ${reason}</p>`)}
          </td>
        </tr>`
    }`;
}

function renderCell({ text, state, reason }: PreviewCell, field: PreviewField): TemplateResult {
  const shown = WORDS[field]?.(text) ?? text;
  const quiet = text === ORDINARY[field] && state !== 'doubt' ? 'quiet' : '';
  return html`<td class="${classOf(field)} ${quiet}" data-state=${state} title=${reason ?? nothing}>
    ${reason === null ? nothing : mark(state)}${shown === '' && reason !== null ? html`<i>empty</i>` : shown}
  </td>`;
}

/** Names for the fields that hold ids. */
const WORDS: Readonly<Partial<Record<PreviewField, (id: string) => string>>> = {
  material: productWords,
  front: productWords,
  back: productWords,
  left: productWords,
  right: productWords,
  showFace: finishWords,
  backFace: finishWords,
};

/** A sign beside the colour, and a word for those who see neither. */
function mark(state: PreviewCell['state']): TemplateResult {
  const refused = state === 'refused';
  return html`<b class="import-mark" data-state=${state} aria-hidden="true">${refused ? '!' : '?'}</b
    ><span class="visually-hidden">${refused ? 'missing or not readable: ' : 'look at it: '}</span>`;
}

function classOf(field: PreviewField): string {
  if (field === 'name') return 'import-name';
  return field === 'quantity' || field === 'length' || field === 'width' ? 'number' : '';
}

/** "Front, back and left" */
function fieldWords(fields: readonly PreviewField[]): string {
  const words = fields.map((field, index) =>
    index === 0 ? FIELD_NAMES[field] : FIELD_NAMES[field].toLowerCase(),
  );
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
