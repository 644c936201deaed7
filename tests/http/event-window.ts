export interface HeardEvent {
  readonly event: string;
  readonly data: Record<string, unknown>;
}

/** A window on a project: hears the stream of events as a browser does, and remembers everything. */
export interface EventWindow {
  readonly heard: readonly HeardEvent[];
  /** The first event, past or to come, that the question says yes to. */
  readonly until: <Data>(
    event: string,
    question: (data: Data) => boolean,
    patienceMs?: number,
  ) => Promise<Data>;
  readonly close: () => void;
}

export async function eventWindow(url: string, projectId: string): Promise<EventWindow> {
  const abort = new AbortController();
  const answer = await fetch(`${url}/api/projects/${projectId}/events`, { signal: abort.signal });
  const heard: HeardEvent[] = [];
  const waiting = new Set<() => void>();
  void listen(answer.body as ReadableStream<Uint8Array>, (event) => {
    heard.push(event);
    for (const look of waiting) look();
  }).catch(() => undefined);
  return {
    heard,
    until(event, question, patienceMs = 20_000) {
      return new Promise((resolve, reject) => {
        const late = setTimeout(() => {
          waiting.delete(look);
          reject(
            new Error(
              `no ${event} event in ${patienceMs} ms; last: ${JSON.stringify(heard.at(-1)).slice(0, 600)}`,
            ),
          );
        }, patienceMs);
        const look = (): void => {
          const found = heard.find((one) => one.event === event && question(one.data as never));
          if (found === undefined) return;
          clearTimeout(late);
          waiting.delete(look);
          resolve(found.data as never);
        };
        waiting.add(look);
        look();
      });
    },
    close: () => abort.abort(),
  };
}

async function listen(stream: ReadableStream<Uint8Array>, tell: (event: HeardEvent) => void): Promise<void> {
  const decoder = new TextDecoder();
  let text = '';
  for await (const chunk of stream as unknown as AsyncIterable<Uint8Array>) {
    text += decoder.decode(chunk, { stream: true });
    for (let end = text.indexOf('\n\n'); end >= 0; end = text.indexOf('\n\n')) {
      const lines = text.slice(0, end).split('\n');
      text = text.slice(end + 2);
      const field = (name: string): string | undefined =>
        lines.find((line) => line.startsWith(`${name}: `))?.slice(name.length + 2);
      const data = field('data');
      if (data !== undefined)
        tell({ event: field('event') ?? '', data: JSON.parse(data) as Record<string, unknown> });
    }
  }
}
