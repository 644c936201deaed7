import type { Response } from 'express';

/** A line now and then keeps routers between from closing an idle connection, ms. */
const HEARTBEAT_MS = 25_000;

/** The open windows of each project, and the word passed to them when something has changed. */
export interface ProjectEvents {
  /** Turns an answer into a stream of events that begins with the revision now current. */
  readonly open: (projectId: number, revision: number, response: Response) => void;
  readonly tellRevision: (projectId: number, revision: number) => void;
  readonly tellCatalogue: () => void;
  /** Ends the streams of a project, or all of them. */
  readonly close: (projectId?: number) => void;
}

export function projectEvents(): ProjectEvents {
  const streams = new Map<Response, number>();

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
      const heartbeat = setInterval(() => response.write(':\n\n'), HEARTBEAT_MS);
      heartbeat.unref();
      response.on('close', () => {
        clearInterval(heartbeat);
        streams.delete(response);
      });
    },
    tellRevision: (projectId, revision) => tell('revision', { revision }, projectId),
    tellCatalogue: () => tell('catalogue', {}),
    close(projectId) {
      for (const [response, of] of streams) if (projectId === undefined || of === projectId) response.end();
    },
  };
}
