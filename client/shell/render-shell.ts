import './shell.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { renderProblemsPanel } from '../panels/problems-panel.ts';
import { renderWorkingPanel } from '../panels/working-panel.ts';
import { load } from '../state/start.ts';
import { type AppState, actions } from '../state/store.ts';
import { renderNavigation } from './navigation.ts';
import { renderNotice } from './notice.ts';
import { askForNewProject } from './project-dialogs.ts';
import { screenRenderer } from './screens.ts';
import { renderTopBar } from './top-bar.ts';
import { renderTotals } from './totals-strip.ts';

/** Screens that show layouts of sheets or cuts of rolls. */
const SHOWS_LAYOUTS: ReadonlySet<AppState['screen']> = new Set(['cutting', 'banding']);

/** The whole page: bars, navigation, the screen chosen, and the sheets that open beside it. */
export function renderShell(state: AppState): TemplateResult {
  return html`
    <a class="skip-link" href="#main" @click=${skipToMain}>Skip to the work area</a>
    ${renderTopBar(state)} ${renderNavigation(state)}
    <main id="main" tabindex="-1" data-region>${renderMain(state)}</main>
    ${
      state.problemsOpen && state.project !== null
        ? html`<aside class="sheet" id="problems" aria-label="Problems" data-region>${renderProblemsPanel(state)}</aside>`
        : nothing
    }
    ${
      state.working === null
        ? nothing
        : html`<aside class="sheet" id="working" aria-label="Working" data-region>${renderWorkingPanel(state)}</aside>`
    }
    ${renderNotice(state)}
  `;
}

function renderMain(state: AppState): TemplateResult {
  if (state.phase === 'unreachable') return renderUnreachable();
  // The catalogue and its products are there also without a project.
  if (state.project === null && state.screen !== 'catalogue')
    return state.phase === 'starting' ? renderLoading() : renderNoProject(state);
  const waits = state.layoutsLeftOut && SHOWS_LAYOUTS.has(state.screen);
  if (waits) actions.wantLayouts();
  const render = waits ? null : screenRenderer(state.screen, actions.redraw);
  return html`
    ${state.project === null ? nothing : renderTotals(state.project)}
    <div class="screen" data-screen=${state.screen}>${render === null ? renderLoading() : render(state)}</div>
  `;
}

function renderLoading(): TemplateResult {
  return html`<div class="loading" role="status">
    <span class="visually-hidden">Loading</span>
    ${Array.from({ length: 8 }, () => html`<span class="loading-line"></span>`)}
  </div>`;
}

function renderNoProject({ projects }: AppState): TemplateResult {
  if (projects.length > 0)
    return html`<div class="empty">
      <h2>No project is open</h2>
      <ul class="choose-project">
        ${projects.map(
          ({ id, name }) =>
            html`<li><button class="button" @click=${() => void actions.openProject(id)}>${name}</button></li>`,
        )}
      </ul>
      <button class="button primary" @click=${askForNewProject}>New project</button>
    </div>`;
  return html`<div class="empty">
    <h2>No project yet</h2>
    <p>A project is one piece of furniture or one job: a part list, and everything that follows from it.</p>
    <button class="button primary" @click=${askForNewProject}>New project</button>
  </div>`;
}

function renderUnreachable(): TemplateResult {
  return html`<div class="empty" role="alert">
    <h2>The Plywright server does not answer</h2>
    <p>Start it with <code>npm start</code> in the project's folder, then try again.</p>
    <button class="button primary" @click=${() => void load()}>Try again</button>
  </div>`;
}

function skipToMain(event: Event): void {
  event.preventDefault();
  document.querySelector<HTMLElement>('#main')?.focus();
}
