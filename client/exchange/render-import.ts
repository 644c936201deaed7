import { html, nothing, type TemplateResult } from 'lit-html';
import { icon } from '../shell/icons.ts';
import type { ImportActions, ImportDraft } from './import-draft.ts';
import { takenRows } from './import-draft.ts';
import { partsWords } from './part-inserts.ts';
import { renderColumns } from './render-columns.ts';
import { renderPreview } from './render-preview.ts';
import { renderProjectFile } from './render-project-file.ts';
import { renderQuestions } from './render-questions.ts';
import { renderSource } from './render-source.ts';

/** The import dialog as its draft stands: where the list comes from, or what it holds. */
export function renderImport(acts: ImportActions, close: () => void): TemplateResult {
  const draft = acts.draft();
  const atSource = draft.preview === null && draft.project === null;
  return html`
    <header class="dialog-head">
      <h2 id="import-title" tabindex="-1">${titleOf(draft)}</h2>
      <button type="button" class="button plain icon" aria-label="Close" @click=${close}>${icon('close')}</button>
    </header>
    <div class="dialog-body" aria-busy=${draft.busy !== null}>
      ${
        draft.preview !== null
          ? html`${renderSummary(draft)} ${renderQuestions(draft.preview, acts)} ${renderColumns(draft.preview, acts)}
            ${renderPreview(draft, acts)}`
          : draft.project !== null
            ? renderProjectFile(draft.project)
            : renderSource(draft, acts)
      }
    </div>
    <footer class="dialog-foot">
      <div class="dialog-said" role="status">${renderSaid(draft)}</div>
      <div class="actions">
        ${
          atSource
            ? html`<button type="button" class="button" @click=${close}>Cancel</button>
              <button
                type="button"
                class="button primary"
                ?disabled=${draft.typed.trim() === '' || draft.busy !== null}
                @click=${() => void acts.readTyped()}
              >
                Read the list
              </button>`
            : html`<button type="button" class="button" @click=${acts.back}>Back</button> ${renderAdd(draft, acts, close)}`
        }
      </div>
    </footer>
  `;
}

function titleOf({ preview, project }: ImportDraft): string {
  if (project !== null) return 'Import a project';
  return preview === null ? 'Import' : 'Import a part list';
}

function renderAdd(draft: ImportDraft, acts: ImportActions, close: () => void): TemplateResult {
  const count = takenRows(draft).length;
  const words =
    draft.busy === 'adding'
      ? 'Adding…'
      : draft.project !== null
        ? 'Add the project'
        : count === 0
          ? 'Nothing to import'
          : `Import ${partsWords(count)}`;
  return html`<button
    type="button"
    class="button primary"
    ?disabled=${draft.busy !== null || (draft.project === null && count === 0)}
    @click=${async () => {
      if (!(await acts.add())) return;
      acts.type('');
      close();
    }}
  >
    ${words}
  </button>`;
}

function renderSaid(draft: ImportDraft): TemplateResult | string | typeof nothing {
  if (draft.fault !== null)
    return html`<span class="fault">${icon('problem')} <span><strong>${draft.fault.message}</strong> ${draft.fault.wayOut}</span></span>`;
  if (draft.busy === 'reading') return 'Reading…';
  return nothing;
}

const SPLITS = {
  '\t': 'at tabs',
  ';': 'at semicolons',
  ',': 'at commas',
  '|': 'at bars',
  sheet: 'first sheet of the workbook',
  lines: 'line by line',
} as const;

/** What was read, in one line, and how much of it wants a look. */
function renderSummary({ preview, fileName }: ImportDraft): TemplateResult | typeof nothing {
  if (preview === null) return nothing;
  const { read, doubt, refused, empty } = preview.counts.rows;
  const from = fileName === null ? 'Pasted text' : `“${fileName}”`;
  const rows = read + doubt + refused + empty;
  return html`<p class="import-summary">
    <span>${from}, read ${SPLITS[preview.split]}: ${rows === 1 ? '1 row' : `${rows} rows`}.</span>
    ${read + empty > 0 ? html`<span class="chip good">${icon('check')} ${read + empty} clear</span>` : nothing}
    ${doubt > 0 ? html`<span class="chip warning"><b aria-hidden="true">?</b> ${doubt} to look at</span>` : nothing}
    ${refused > 0 ? html`<span class="chip error"><b aria-hidden="true">!</b> ${refused} incomplete or not readable</span>` : nothing}
  </p>`;
}
