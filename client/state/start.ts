import { getState, setState } from './app-state.ts';
import { lastProjectId, openProject, reloadCatalogue, reloadProjects } from './project-actions.ts';
import { readRoute } from './route.ts';
import { restoreMode } from './view-actions.ts';

/** Brings the client up: mode, catalogue, project list, and the project the address or the last visit names. */
export async function start(): Promise<void> {
  restoreMode();
  window.addEventListener('hashchange', followAddress);
  window.addEventListener('popstate', followAddress);
  await load();
}

/** The first requests; called again when the server did not answer at first. */
export async function load(): Promise<void> {
  setState({ phase: 'starting', screen: readRoute(location.hash).screen });
  await Promise.all([reloadCatalogue(), reloadProjects()]);
  const { projects, catalogue } = getState();
  if (catalogue === null) return setState({ phase: 'unreachable' });
  const wanted = [readRoute(location.hash).projectId, lastProjectId()].find((id) =>
    projects.some((one) => one.id === id),
  );
  const id = wanted ?? projects[0]?.id;
  if (id !== undefined) await openProject(id);
  setState({ phase: 'ready' });
}

function followAddress(): void {
  const route = readRoute(location.hash);
  if (route.screen !== getState().screen) setState({ screen: route.screen });
  if (route.projectId !== null && route.projectId !== getState().project?.id)
    void openProject(route.projectId);
}
