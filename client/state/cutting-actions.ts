import type { CuttingSearchAnswer, PlanView } from '../../server/http/contract.ts';
import { ApiError, request } from './api.ts';
import { getState, setState } from './app-state.ts';
import { inTurn } from './in-turn.ts';
import { refreshWorking } from './working-actions.ts';

/** The version of the plan shown, as the server counts them from its start. */
let shown: { readonly projectId: string; readonly planVersion: number } | null = null;

/** How soon layouts are asked for again when they did not come, ms. */
const ASK_AGAIN_MS = 1000;

/** The latest answer heard from the server as it runs. */
let latest = 0;

/** Asks how the searches stand: when a stream of events begins, since what it said before was missed. */
export async function fetchCutting(projectId: string): Promise<void> {
  // The stream may be that of a server started anew, which counts from the beginning.
  latest = 0;
  hearCutting(projectId, await request<CuttingSearchAnswer>('GET', path(projectId, 'search')));
}

/**
 * Takes what the server says of the searches, unless something later has been heard: the answer to “Stop” may come after
 * the event that the search has ended. A better plan of the same revision is fetched without the rows.
 */
export function hearCutting(projectId: string, answer: CuttingSearchAnswer): void {
  const { project } = getState();
  if (project?.id !== projectId || answer.sequence < latest) return;
  latest = answer.sequence;
  setState({ cutting: answer });
  const seen = shown?.projectId === projectId ? shown.planVersion : 0;
  shown = { projectId, planVersion: answer.planVersion };
  if (answer.planVersion !== seen && answer.revision === project.revision)
    void inTurn(() => fetchPlan(projectId, answer.revision)).catch(() => undefined);
}

/** Searches one material again and longer. */
export function searchCutting(materialId: string): Promise<void> {
  return ask('search', { materialId });
}

/** Ends every search of the open project. */
export function stopCutting(): Promise<void> {
  return ask('stop', {});
}

async function ask(what: 'search' | 'stop', body: object): Promise<void> {
  const id = getState().project?.id;
  if (id === undefined) return;
  try {
    hearCutting(id, await request<CuttingSearchAnswer>('POST', path(id, what), body));
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    setState({ notice: { kind: 'error', text: error.message, wayOut: error.wayOut } });
  }
}

let asking = false;

/** Asks for the layouts that the answer to an edit of a long list has left out. */
export function wantLayouts(): void {
  const { project, layoutsLeftOut } = getState();
  if (project === null || !layoutsLeftOut || asking) return;
  asking = true;
  void inTurn(() => fetchPlan(project.id, getState().project?.revision ?? project.revision))
    .catch(() => undefined)
    .finally(() => {
      asking = false;
      // Another edit was first, or the server is away: whoever draws the screen again asks again.
      if (getState().layoutsLeftOut) setTimeout(() => setState({}), ASK_AGAIN_MS);
    });
}

async function fetchPlan(projectId: string, revision: number): Promise<void> {
  const plan = await request<PlanView>('GET', `/api/projects/${encodeURIComponent(projectId)}/plan`);
  const { project } = getState();
  // An edit made meanwhile brings its own plan.
  if (project?.id !== projectId || project.revision !== revision) return;
  setState({ project: { ...project, plan }, layoutsLeftOut: false });
  void refreshWorking();
}

function path(projectId: string, rest: string): string {
  return `/api/projects/${encodeURIComponent(projectId)}/cutting/${rest}`;
}
