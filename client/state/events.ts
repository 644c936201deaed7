import type { CalendarNotice, CuttingSearchAnswer } from '../../server/http/contract.ts';

/** What the server tells a window about changes made elsewhere. */
export interface ProjectEvents {
  readonly onRevision: (revision: number) => void;
  readonly onCatalogue: () => void;
  readonly onCutting: (answer: CuttingSearchAnswer) => void;
  readonly onCalendar: (notice: CalendarNotice) => void;
  /** A stream has begun, the first one or one after a break. */
  readonly onBegin: () => void;
  /** The window is looked at again; what the stream said meanwhile, except for the revision, was missed. */
  readonly onReturn: () => void;
}

/**
 * Listens to one project's server-sent events until the returned function is called. The browser reconnects by
 * itself, and the server begins each stream with the revision now current. A window nobody looks at lets its stream
 * go, because a browser keeps only six connections to one server.
 */
export function listenToProject(projectId: string, events: ProjectEvents): () => void {
  let source: EventSource | null = null;
  let wasHidden = false;

  function listen(): void {
    if (document.hidden) {
      source?.close();
      source = null;
    } else if (source === null) {
      source = open(projectId, events);
      if (wasHidden) events.onReturn();
    }
    wasHidden = document.hidden;
  }

  document.addEventListener('visibilitychange', listen);
  listen();
  return () => {
    document.removeEventListener('visibilitychange', listen);
    source?.close();
  };
}

function open(
  projectId: string,
  { onRevision, onCatalogue, onCutting, onCalendar, onBegin }: ProjectEvents,
): EventSource {
  const source = new EventSource(`/api/projects/${encodeURIComponent(projectId)}/events`);
  source.addEventListener('revision', (event) => {
    const { revision } = JSON.parse((event as MessageEvent<string>).data) as { revision?: unknown };
    if (typeof revision === 'number') onRevision(revision);
  });
  source.addEventListener('catalogue', onCatalogue);
  source.addEventListener('cutting', (event) =>
    onCutting(JSON.parse((event as MessageEvent<string>).data) as CuttingSearchAnswer),
  );
  source.addEventListener('calendar', (event) =>
    onCalendar(JSON.parse((event as MessageEvent<string>).data) as CalendarNotice),
  );
  source.addEventListener('open', onBegin);
  return source;
}
