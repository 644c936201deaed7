import { html, type TemplateResult } from 'lit-html';
import { actions, getState } from '../state/store.ts';
import { openDialog } from './open-dialog.ts';

/** Common currencies offered; any other three-letter code can be set later in Settings. */
const CURRENCIES = [
  'USD',
  'EUR',
  'GBP',
  'CAD',
  'AUD',
  'NZD',
  'CHF',
  'SEK',
  'NOK',
  'DKK',
  'PLN',
  'JPY',
] as const;

export function askForNewProject(): void {
  openDialog(
    'New project',
    (close) => html`
      <form method="dialog" @submit=${(event: SubmitEvent) => create(event, close)}>
        <h2>New project</h2>
        <label class="field"><span>Name</span><input name="name" required maxlength="200" autocomplete="off" placeholder="Hall bookcase" /></label>
        <label class="field">
          <span>Units</span>
          <select name="units">
            <option value="us">Inches and feet, US gallons</option>
            <option value="metric" selected>Millimetres and metres, litres</option>
          </select>
          <small>Only how figures are printed: inches may be typed in a metric project, and the other way round.</small>
        </label>
        <label class="field">
          <span>Currency</span>
          <select name="currency">${CURRENCIES.map((code) => html`<option ?selected=${code === lastCurrency()}>${code}</option>`)}</select>
        </label>
        ${dialogActions(close, html`<button class="button primary">Create project</button>`)}
      </form>
    `,
  );
}

export function askToDuplicate(): void {
  const project = getState().project;
  if (project === null) return;
  openDialog(
    'Duplicate project',
    (close) => html`
      <form
        method="dialog"
        @submit=${(event: SubmitEvent) => {
          event.preventDefault();
          void actions.duplicateProject(read(event, 'name'));
          close();
        }}
      >
        <h2>Duplicate “${project.settings.name}”</h2>
        <label class="field"><span>Name of the copy</span><input name="name" required maxlength="200" autocomplete="off" .value=${`${project.settings.name}, copy`} /></label>
        ${dialogActions(close, html`<button class="button primary">Duplicate</button>`)}
      </form>
    `,
  );
}

export function askToDelete(): void {
  const project = getState().project;
  if (project === null) return;
  const parts = project.rows.parts.length;
  openDialog(
    'Delete project',
    (close) => html`
      <form
        method="dialog"
        @submit=${(event: SubmitEvent) => {
          event.preventDefault();
          void actions.deleteProject();
          close();
        }}
      >
        <h2>Delete “${project.settings.name}”?</h2>
        <p>Its ${parts} ${parts === 1 ? 'part' : 'parts'}, finishes and settings go with it. It can be brought back from the list of projects for 30 days.</p>
        ${dialogActions(close, html`<button class="button danger">Delete project</button>`)}
      </form>
    `,
  );
}

/** The deleted projects, each with the way back. */
export async function showDeletedProjects(): Promise<void> {
  const projects = await actions.deletedProjects();
  if (projects === null) return;
  openDialog(
    'Deleted projects',
    (close) => html`
      <form method="dialog">
        <h2>Deleted projects</h2>
        <p>${
          projects.length === 0
            ? 'There are none. A deleted project can be brought back from here for 30 days.'
            : 'Each is removed for good 30 days after it was deleted.'
        }</p>
        <ul class="deleted-projects">
          ${projects.map(
            ({ id, name, deletedAt }) => html`<li>
              <span>${name}</span><small class="deleted-on">deleted ${new Date(deletedAt).toLocaleDateString(undefined, { dateStyle: 'medium' })}</small>
              <button
                type="button"
                class="button"
                aria-label="Bring back ${name}"
                @click=${() => {
                  close();
                  void actions.bringBackProject(id);
                }}
              >
                Bring back
              </button>
            </li>`,
          )}
        </ul>
        <div class="actions"><button class="button primary">Close</button></div>
      </form>
    `,
  );
}

function dialogActions(close: () => void, main: TemplateResult): TemplateResult {
  return html`<div class="actions"><button type="button" class="button" @click=${close}>Cancel</button>${main}</div>`;
}

function create(event: SubmitEvent, close: () => void): void {
  event.preventDefault();
  void actions.createProject({
    name: read(event, 'name'),
    units: read(event, 'units') === 'us' ? 'us' : 'metric',
    currency: read(event, 'currency'),
  });
  close();
}

function read(event: SubmitEvent, field: string): string {
  return String(new FormData(event.target as HTMLFormElement).get(field) ?? '').trim();
}

function lastCurrency(): string {
  return getState().project?.settings.currency ?? 'USD';
}
