import { html, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { icon } from '../shell/icons.ts';
import type { ImportActions, ImportDraft } from './import-draft.ts';

const EXAMPLE = 'Part, Qty, Length, Width, Edges\nSide, 2, 1800, 300, front\nShelf, 5, 864, 285, front';

/** Where the list comes from: pasted text, or a file chosen or dropped. */
export function renderSource({ typed, busy }: ImportDraft, acts: ImportActions): TemplateResult {
  return html`
    <div class="import-source">
      <label class="field">
        <span>Paste a part list</span>
        <textarea
          rows="9"
          spellcheck="false"
          autocomplete="off"
          placeholder=${EXAMPLE}
          .value=${live(typed)}
          @input=${(event: Event) => acts.type((event.currentTarget as HTMLTextAreaElement).value)}
          @keydown=${(event: KeyboardEvent) => {
            if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey)) return;
            event.preventDefault();
            if (typed.trim() !== '') void acts.readTyped();
          }}
        ></textarea>
        <small>Cells copied from a spreadsheet, comma or semicolon lists, or plain lines such as “4 pcs side 600 x 300”.</small>
      </label>
      <div class="import-file">
        ${icon('folder')}
        <div>
          <strong>Or bring a file</strong>
          <p>CSV, text or XLSX with a part list, or a project file. Drop it here, or choose it.</p>
        </div>
        <button type="button" class="button" ?disabled=${busy !== null} @click=${chooseFile}>Choose a file…</button>
        <input
          type="file"
          hidden
          aria-label="File to import"
          accept=".csv,.tsv,.txt,.xlsx,.json,text/csv,text/plain,application/json"
          @change=${(event: Event) => {
            const input = event.currentTarget as HTMLInputElement;
            const file = input.files?.[0];
            // Emptied, so that the same file can be chosen again after it was corrected.
            input.value = '';
            if (file !== undefined) void acts.readFile(file);
          }}
        />
      </div>
    </div>
  `;
}

function chooseFile(event: Event): void {
  const chooser = (event.currentTarget as HTMLElement).parentElement?.querySelector<HTMLInputElement>(
    'input[type="file"]',
  );
  chooser?.click();
}
