/** What the server tells a window about changes made elsewhere. */
export interface ProjectEvents {
  readonly onRevision: (revision: number) => void;
  readonly onCatalogue: () => void;
}

/** Listens to one project's server-sent events until the returned function is called. The browser reconnects by itself. */
export function listenToProject(projectId: string, events: ProjectEvents): () => void {
  const source = new EventSource(`/api/projects/${encodeURIComponent(projectId)}/events`);
  source.addEventListener('revision', (event) => {
    const revision = (JSON.parse((event as MessageEvent<string>).data) as { revision?: unknown }).revision;
    if (typeof revision === 'number') events.onRevision(revision);
  });
  source.addEventListener('catalogue', () => events.onCatalogue());
  return () => source.close();
}
