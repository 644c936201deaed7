import type { CuttingSearchAnswer, PlanView } from '../../server/http/contract.ts';
import { ApiError, request } from './api.ts';
import { getState, setState } from './app-state.ts';
import { inTurn } from './in-turn.ts';
import { refreshWorking } from './working-actions.ts';

/** The version of the plan shown, as the server counts them from its start. */
let shown: { readonly projectId: string; readonly planVersion: number } | null = null;

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

async function fetchPlan(projectId: string, revision: number): Promise<void> {
  const plan = await request<PlanView>('GET', `/api/projects/${encodeURIComponent(projectId)}/plan`);
  const { project } = getState();
  // An edit made meanwhile brings its own plan.
  if (project?.id !== projectId || project.revision !== revision) return;
  setState({ project: { ...project, plan } });
  void refreshWorking();
}

function path(projectId: string, rest: string): string {
  return `/api/projects/${encodeURIComponent(projectId)}/cutting/${rest}`;
}
