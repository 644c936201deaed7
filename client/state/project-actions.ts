import type { DeletedProject, ProjectState, ProjectSummary } from '../../server/http/contract.ts';
import type { Catalogue } from '../../server/planning/product.ts';
import { ApiError, request } from './api.ts';
import { getState, setState } from './app-state.ts';
import { fetchCalendar } from './calendar-actions.ts';
import { fetchCutting, hearCutting } from './cutting-actions.ts';
import { listenToProject } from './events.ts';
import { inTurn } from './in-turn.ts';
import { askAgain, calendarChanged } from './project-answers.ts';
import { writeRoute } from './route.ts';
import { refreshWorking } from './working-actions.ts';

const LAST_PROJECT_KEY = 'plywright.project';

/** Of another project, or none, nothing is known yet. */
const NOT_ASKED = { buying: null, ledger: null, attachments: null, air: null } as const;

let stopListening: (() => void) | null = null;

export function projectPath(projectId: string, rest = ''): string {
  return `/api/projects/${encodeURIComponent(projectId)}${rest === '' ? '' : `/${rest}`}`;
}

export function lastProjectId(): string | null {
  return localStorage.getItem(LAST_PROJECT_KEY);
}

/** Fetches a project and shows it; the screen stays the one chosen. */
export async function openProject(id: string): Promise<void> {
  await reporting(() =>
    inTurn(async () => {
      const project = await request<ProjectState>('GET', projectPath(id));
      enter(project);
    }),
  );
}

export async function createProject(values: {
  readonly name: string;
  readonly units: ProjectSummary['units'];
  readonly currency: string;
}): Promise<void> {
  await reporting(() =>
    inTurn(async () => enter(await request<ProjectState>('POST', '/api/projects', values))),
  );
  await reloadProjects();
}

export async function duplicateProject(name: string): Promise<void> {
  const id = getState().project?.id;
  if (id === undefined) return;
  await reporting(() =>
    inTurn(async () => enter(await request<ProjectState>('POST', projectPath(id, 'duplicate'), { name }))),
  );
  await reloadProjects();
}

export async function deleteProject(): Promise<void> {
  const project = getState().project;
  if (project === null) return;
  const gone = await reporting(() =>
    inTurn(() =>
      request<void>('DELETE', projectPath(project.id), { revision: getState().project?.revision }),
    ),
  );
  if (!gone) return;
  leave();
  await reloadProjects();
  const next = getState().projects[0];
  if (next !== undefined) await openProject(next.id);
  setState({
    notice: {
      kind: 'info',
      text: `Deleted “${project.settings.name}”.`,
      wayOut: 'The list of projects keeps it for 30 days.',
      offer: { label: 'Bring it back', carryOut: () => void bringBackProject(project.id) },
    },
  });
}

/** The projects that were deleted and can still be brought back, the latest first; null when they cannot be read. */
export async function deletedProjects(): Promise<readonly DeletedProject[] | null> {
  let projects: readonly DeletedProject[] | null = null;
  await reporting(async () => {
    projects = (await request<{ projects: readonly DeletedProject[] }>('GET', '/api/projects/deleted'))
      .projects;
  });
  return projects;
}

/** Makes a deleted project what it was, and opens it. */
export async function bringBackProject(id: string): Promise<void> {
  await reporting(() =>
    inTurn(async () => enter(await request<ProjectState>('POST', projectPath(id, 'bring-back')))),
  );
  await reloadProjects();
}

export async function reloadProjects(): Promise<void> {
  await reporting(async () => {
    const answer = await request<{ projects: readonly ProjectSummary[] }>('GET', '/api/projects');
    setState({ projects: answer.projects });
  });
}

export async function reloadCatalogue(): Promise<void> {
  await reporting(async () => setState({ catalogue: await request<Catalogue>('GET', '/api/catalogue') }));
}

/** Takes the newest state of the project that is open, e.g. after another window changed it. */
export async function fetchProject(id: string): Promise<void> {
  const project = await request<ProjectState>('GET', projectPath(id));
  if (getState().project?.id === id) setState({ project, layoutsLeftOut: false });
  void refreshWorking();
}

function enter(project: ProjectState): void {
  const changed = getState().project?.id !== project.id;
  setState({
    project,
    layoutsLeftOut: false,
    phase: 'ready',
    ...(changed
      ? { selectedPartId: null, working: null, focus: null, cutting: null, calendar: null, ...NOT_ASKED }
      : {}),
  });
  localStorage.setItem(LAST_PROJECT_KEY, project.id);
  const hash = writeRoute({ projectId: project.id, screen: getState().screen });
  if (location.hash !== hash) history.pushState(null, '', hash);
  listen(project.id);
}

function leave(): void {
  stopListening?.();
  stopListening = null;
  localStorage.removeItem(LAST_PROJECT_KEY);
  setState({
    project: null,
    cutting: null,
    calendar: null,
    ...NOT_ASKED,
    selectedPartId: null,
    working: null,
    focus: null,
    problemsOpen: false,
  });
}

function listen(id: string): void {
  stopListening?.();
  stopListening = listenToProject(id, {
    // In turn: the answer to an edit of this very window, which brings the same revision, is then in already.
    onRevision: (revision) =>
      void inTurn(async () => {
        const project = getState().project;
        if (project?.id === id && revision > project.revision) await fetchProject(id);
      }).catch(() => undefined),
    onReturn: () => void reloadCatalogue(),
    onCutting: (answer) => hearCutting(id, answer),
    onCalendar: () => {
      calendarChanged();
      if (getState().calendar !== null) void fetchCalendar(id);
      if (getState().working?.at.startsWith('air/') === true) void refreshWorking();
    },
    onBegin: () => {
      askAgain();
      void fetchCutting(id).catch(() => undefined);
      // What the stream said while it was broken was missed; a calendar that nobody has asked for is not fetched.
      if (getState().calendar !== null) void fetchCalendar(id);
    },
    onCatalogue: () => {
      void reloadCatalogue();
      void inTurn(() => fetchProject(id)).catch(() => undefined);
    },
  });
}

/** Runs `work`; a refusal becomes a notice. True when it went through. */
export async function reporting(work: () => Promise<unknown>): Promise<boolean> {
  try {
    await work();
    return true;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    setState({ notice: { kind: 'error', text: error.message, wayOut: error.wayOut } });
    return false;
  }
}
