import { html, nothing, type TemplateResult } from 'lit-html';
import { openExport, openImport } from '../exchange/exchange-dialogs.ts';
import { type AppState, actions } from '../state/store.ts';
import { icon } from './icons.ts';
import { askForNewProject, askToDelete, askToDuplicate, showDeletedProjects } from './project-dialogs.ts';

/** The project's name, which opens the list of projects and what can be done with this one. */
export function renderProjectMenu(state: AppState): TemplateResult {
  const { project, projects } = state;
  return html`
    <div class="project-menu">
      <button class="button plain project-button" popovertarget="project-list" title="Open, add, duplicate or delete a project">
        <span class="project-name">${project?.settings.name ?? 'No project'}</span>${icon('caret')}
      </button>
      <div id="project-list" class="menu" popover>
        ${projects.length === 0 ? nothing : html`<h2 id="project-list-title">Projects</h2>`}
        <ul aria-labelledby="project-list-title">
          ${projects.map(
            (one) => html`<li>
              <button class="menu-item" aria-current=${one.id === project?.id} @click=${() => choose(() => void actions.openProject(one.id))}>
                <span>${one.name}</span><small>${one.units === 'metric' ? 'mm' : 'inch'} · ${one.currency}</small>
              </button>
            </li>`,
          )}
        </ul>
        <div class="menu-actions">
          <button class="menu-item" @click=${() => choose(askForNewProject)}>${icon('plus')} New project…</button>
          <button class="menu-item" @click=${() => choose(() => openImport())}>${icon('import')} Import…</button>
          ${
            project === null
              ? nothing
              : html`
                <button class="menu-item" @click=${() => choose(openExport)}>${icon('export')} Export…</button>
                <button class="menu-item" @click=${() => choose(askToDuplicate)}>${icon('duplicate')} Duplicate this project…</button>
                <button class="menu-item danger" @click=${() => choose(askToDelete)}>${icon('bin')} Delete this project…</button>
              `
          }
          <button class="menu-item" @click=${() => choose(() => void showDeletedProjects())}>${icon('undo')} Deleted projects…</button>
        </div>
      </div>
    </div>
  `;
}

function choose(work: () => void): void {
  document.querySelector<HTMLElement>('#project-list')?.hidePopover();
  work();
}
