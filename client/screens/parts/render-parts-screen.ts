import './parts.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import type { UnitSystem } from '../../../server/planning/project-input.ts';
import { renderPartPanel } from '../../panels/part-panel.ts';
import { icon } from '../../shell/icons.ts';
import type { AppState } from '../../state/store.ts';
import { createPartsSheet, type PartsSheet } from './parts-sheet.ts';
import { openColumnsPanel } from './tools/columns-panel.ts';
import { openGroupPanel } from './tools/group-panel.ts';
import { listenForFind, renderSearchBox } from './tools/search-box.ts';
import { renderViewBar } from './tools/view-bar.ts';
import { withGroups } from './view/list-view.ts';
import { viewState } from './view-state.ts';

// Paper is wanted later than the list.
void import('./paper-parts.ts');

let sheet: PartsSheet | null = null;

/** The part list: what is typed, with the figures that come of it beside it. */
export function renderPartsScreen(state: AppState): TemplateResult {
  if (state.project === null || state.catalogue === null) return html``;
  if (sheet === null) {
    sheet = createPartsSheet(state.project, state.catalogue);
    listenForFind();
  }
  const { host } = sheet;
  const panel = viewState.panelOpen() ? renderPartPanel(state) : nothing;
  return html`
    <section class="parts-screen" aria-labelledby="parts-title">
      <div class="parts-work">
        ${toolbar(sheet, state)}
        ${renderViewBar(sheet)} ${state.project.rows.parts.length === 0 ? emptyHint(state.project.settings.units) : nothing}
        <div class="parts-grid" ${ref((slot) => slot !== undefined && settle(slot, host))}></div>
      </div>
      ${panel === nothing ? nothing : html`<aside class="parts-panel" aria-label="Selected part">${panel}</aside>`}
    </section>
  `;
}

/** What to begin with, and lengths in the notations of the project's units first. */
function emptyHint(units: UnitSystem): TemplateResult {
  const lengths = units === 'metric' ? ['600', '60 cm', '23 5/8"'] : ['23 5/8', `2' 7 1/2"`, '600 mm'];
  return html`<p class="parts-hint">
    Type the first part in the line below, or paste a table from a spreadsheet: part, section, quantity, length, width,
    material. Lengths are read as people write them: ${lengths.map((length, at) => html`${at > 0 ? ', ' : ''}<code>${length}</code>`)}.
  </p>`;
}

/** Puts the grid's long-lived element where this drawing of the screen has room for it. */
function settle(slot: Element, host: HTMLElement): void {
  if (host.parentElement === slot) return;
  slot.append(host);
  requestAnimationFrame(() => sheet?.resume());
}

function toolbar(parts: PartsSheet, state: AppState): TemplateResult {
  const nobody = state.selectedPartId === null;
  const row = (
    name: Parameters<PartsSheet['command']>[0],
    symbol: Parameters<typeof icon>[0],
    words: string,
    keys: string,
  ) => html`
    <button
      class="button plain tool"
      title="${words} (${keys})"
      aria-label=${words}
      ?disabled=${nobody}
      @click=${() => parts.command(name)}
    >
      ${icon(symbol)}
    </button>
  `;
  return html`
    <div class="toolbar parts-toolbar" role="toolbar" aria-label="Rows">
      <h1 id="parts-title">Parts</h1>
      <button class="button primary" @click=${() => parts.addPart()}>${icon('plus')}<span class="words">Add part</span></button>
      <span class="tools">
        ${row('insert-below', 'insert', 'Insert a part below', 'Ctrl+Enter')}
        ${row('duplicate', 'duplicate', 'Duplicate', 'Alt+Shift+Down')}
        ${row('move-up', 'up', 'Move up', 'Alt+Up')} ${row('move-down', 'down', 'Move down', 'Alt+Down')}
        ${row('delete', 'bin', 'Delete part', 'Ctrl+Delete')}
      </span>
      <span class="spacer"></span>
      ${renderSearchBox(parts.list, parts.takeFocus)}
      <span class="tools view-tools">
        <button
          class="button plain view-tool"
          aria-haspopup="dialog"
          aria-pressed=${parts.list.view().groupBy !== null}
          title="Group the list by section or material"
          @click=${(event: Event) => groups(event.currentTarget as HTMLElement, parts)}
        >
          ${icon('group')}<span class="words">Groups</span>
        </button>
        <button
          class="button plain view-tool"
          aria-haspopup="dialog"
          title="Choose and order the columns"
          @click=${(event: Event) => openColumnsPanel(event.currentTarget as HTMLElement, parts.columns)}
        >
          ${icon('columns')}<span class="words">Columns</span>
        </button>
      </span>
      <button
        class="button plain view-tool drawing-tool"
        aria-pressed=${viewState.panelOpen()}
        title="Show or hide the drawing of the selected part"
        @click=${() => viewState.setPanel(!viewState.panelOpen())}
      >
        ${icon('drawing')}<span class="words">Drawing</span>
      </button>
    </div>
  `;
}

function groups(button: HTMLElement, { list }: PartsSheet): void {
  openGroupPanel(button, {
    groupBy: () => list.view().groupBy,
    setGroupBy: (by) => list.change((view) => withGroups(view, by)),
    openAll: list.openAllGroups,
  });
}
