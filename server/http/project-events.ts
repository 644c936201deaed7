import type { Response } from 'express';
import type { CalendarNotice, CuttingSearchAnswer } from './contract.ts';

/** A line now and then keeps routers between from closing an idle connection, ms. */
const HEARTBEAT_MS = 25_000;

/** The open windows of each project, and the word passed to them when something has changed. */
export interface ProjectEvents {
  /** Turns an answer into a stream of events that begins with the revision now current. */
  readonly open: (projectId: number, revision: number, response: Response) => void;
  readonly tellRevision: (projectId: number, revision: number) => void;
  readonly tellCatalogue: () => void;
  /** How the searches for better cutting stand. */
  readonly tellCutting: (projectId: number, state: CuttingSearchAnswer) => void;
  /** The calendar has changed. */
  readonly tellCalendar: (projectId: number, notice: CalendarNotice) => void;
  /** The projects that some window is open on. */
  readonly openProjects: () => ReadonlySet<number>;
  /** Calls the listener when a window is opened on a project, or a project that may be open has changed. */
  readonly watch: (listener: (projectId: number) => void) => void;
  /** Ends the streams of a project, or all of them. */
  readonly close: (projectId?: number) => void;
}

export function projectEvents(): ProjectEvents {
  const streams = new Map<Response, number>();
  const listeners: ((projectId: number) => void)[] = [];
  const openProjects = (): Set<number> => new Set(streams.values());
  const changed = (projectId: number): void => {
    for (const listener of listeners) listener(projectId);
  };

  function tell(event: string, data: object, projectId?: number): void {
    for (const [response, of] of streams)
      if (projectId === undefined || of === projectId)
        response.write(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`);
  }

  return {
    open(projectId, revision, response) {
      response.writeHead(200, {
        'Content-Type': 'text/event-stream',
        'Cache-Control': 'no-store',
        'X-Accel-Buffering': 'no',
      });
      response.write(`event: revision\ndata: ${JSON.stringify({ revision })}\n\n`);
      streams.set(response, projectId);
      changed(projectId);
      const heartbeat = setInterval(() => response.write(':\n\n'), HEARTBEAT_MS);
      heartbeat.unref();
      response.on('close', () => {
        clearInterval(heartbeat);
        streams.delete(response);
      });
    },
    tellRevision(projectId, revision) {
      tell('revision', { revision }, projectId);
      changed(projectId);
    },
    tellCatalogue() {
      tell('catalogue', {});
      openProjects().forEach(changed);
    },
    tellCutting: (projectId, state) => tell('cutting', state, projectId),
    tellCalendar: (projectId, notice) => tell('calendar', notice, projectId),
    openProjects,
    watch: (listener) => listeners.push(listener),
    close(projectId) {
      for (const [response, of] of streams) if (projectId === undefined || of === projectId) response.end();
    },
  };
}
