import { html, nothing, type TemplateResult } from 'lit-html';
import type { Problem } from '../../server/planning/problem.ts';
import { openExport, openImport } from '../exchange/exchange-dialogs.ts';
import { type AppState, actions, type Mode } from '../state/store.ts';
import { openHelp } from './help-dialog.ts';
import { type IconName, icon } from './icons.ts';
import { renderProjectMenu } from './project-menu.ts';

const NEXT_MODE: Record<Mode, Mode> = { system: 'light', light: 'dark', dark: 'system' };
const MODE_ICON: Record<Mode, IconName> = { system: 'system', light: 'sun', dark: 'moon' };
const MODE_WORDS: Record<Mode, string> = {
  system: 'Colours follow the system',
  light: 'Light colours',
  dark: 'Dark colours',
};

const SEVERITIES = [
  { severity: 'error', one: 'error', many: 'errors' },
  { severity: 'warning', one: 'warning', many: 'warnings' },
  { severity: 'note', one: 'note', many: 'notes' },
] as const satisfies readonly { severity: Problem['severity']; one: string; many: string }[];

/** Project, units, undo and redo, problems, colours, help. */
export function renderTopBar(state: AppState): TemplateResult {
  const { project } = state;
  return html`
    <header class="top-bar" data-region>
      <span class="brand"><img src="/mark.svg" alt="Plywright" width="26" height="26" /></span>
      ${renderProjectMenu(state)}
      ${project === null ? nothing : renderChips(project.settings.units, project.settings.currency)}
      <span class="spacer"></span>
      <span class="saving">${state.pending > 0 ? 'Saving…' : ''}</span>
      ${project === null ? nothing : renderExchange()} ${project === null ? nothing : renderEditing(state, project)}
      <button
        class="button plain icon mode"
        title="${MODE_WORDS[state.mode]}; press for the next"
        aria-label="${MODE_WORDS[state.mode]}"
        @click=${() => actions.setMode(NEXT_MODE[state.mode])}
      >
        ${icon(MODE_ICON[state.mode])}
      </button>
      <button class="button plain icon help" title="Keyboard and help (?)" aria-label="Keyboard and help" @click=${openHelp}>
        ${icon('help')}
      </button>
    </header>
  `;
}

function renderChips(units: 'metric' | 'us', currency: string): TemplateResult {
  const words = units === 'metric' ? 'mm' : 'inch';
  const settings = (): void => actions.show('settings');
  return html`<span class="chips">
    <button class="chip" title="Units of this project; change them in Settings" aria-label="Units: ${words}" @click=${settings}>${words}</button>
    <button class="chip" title="Currency of this project; change it in Settings" aria-label="Currency: ${currency}" @click=${settings}>${currency}</button>
  </span>`;
}

function renderExchange(): TemplateResult {
  return html`<span class="chips exchange">
    <button class="button plain" title="Bring a part list or a project in" @click=${() => openImport()}>${icon('import')} Import</button>
    <button class="button plain" title="Save lists and the project as files" @click=${openExport}>${icon('export')} Export</button>
  </span>`;
}

function renderEditing(state: AppState, project: NonNullable<AppState['project']>): TemplateResult {
  const undo = project.undoLabel === null ? 'Nothing to undo' : `Undo: ${project.undoLabel}`;
  const redo = project.redoLabel === null ? 'Nothing to do again' : `Do again: ${project.redoLabel}`;
  return html`
    <button class="button plain icon" title="${undo} (Ctrl+Z)" aria-label=${undo} ?disabled=${!project.canUndo} @click=${() => void actions.undo()}>
      ${icon('undo')}
    </button>
    <button class="button plain icon" title="${redo} (Ctrl+Y)" aria-label=${redo} ?disabled=${!project.canRedo} @click=${() => void actions.redo()}>
      ${icon('redo')}
    </button>
    ${renderProblemsButton(state, project.plan.problems)}
  `;
}

function renderProblemsButton(state: AppState, problems: readonly Problem[]): TemplateResult {
  const counts = SEVERITIES.map((entry) => ({
    ...entry,
    count: problems.filter(({ severity }) => severity === entry.severity).length,
  })).filter(({ count }) => count > 0);
  return html`
    <button
      class="button plain problems-button"
      id="problems-button"
      title="Problems"
      aria-expanded=${state.problemsOpen}
      @click=${() => actions.showProblems(!state.problemsOpen)}
    >
      ${
        counts.length === 0
          ? html`${icon('check')}<span class="label">No problems</span>`
          : counts.map(
              ({ severity, count, one, many }) =>
                html`<span class="count ${severity}"
                  >${count}<span class="visually-hidden"> ${count === 1 ? one : many}</span></span
                >`,
            )
      }
    </button>
  `;
}
