import type { QuoteAnswer } from '../../server/http/contract.ts';
import { ApiError, request } from './api.ts';
import { getState, setState } from './app-state.ts';

interface Held {
  readonly answer: QuoteAnswer | null;
  /** These very objects are replaced whenever what the answer depends on has changed. */
  readonly askedWith: readonly unknown[];
}

/** The quotes of one project, as last heard of. */
let projectId = '';
let held = new Map<string, Held>();

/**
 * A quote worked out as last heard of; null before the server has said. Asks again when the project or the catalogue
 * has changed, so a screen calls it with every drawing.
 */
export function wantQuote(quoteId: string): QuoteAnswer | null {
  const { project, catalogue } = getState();
  if (project === null) return null;
  if (project.id !== projectId) {
    projectId = project.id;
    held = new Map();
  }
  const known = held.get(quoteId);
  const askedWith = [project, catalogue];
  if (known?.askedWith.every((part, index) => part === askedWith[index])) return known.answer;
  held.set(quoteId, { answer: known?.answer ?? null, askedWith });
  void fetchQuote(project.id, quoteId, askedWith);
  return known?.answer ?? null;
}

async function fetchQuote(id: string, quoteId: string, askedWith: readonly unknown[]): Promise<void> {
  try {
    const path = `/api/projects/${encodeURIComponent(id)}/quotes/${encodeURIComponent(quoteId)}`;
    const answer = await request<QuoteAnswer>('GET', path);
    // Of two answers the one asked for later is kept, however they arrive.
    if (id !== projectId || held.get(quoteId)?.askedWith !== askedWith) return;
    held.set(quoteId, { answer, askedWith });
    setState({});
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    // A quote deleted in the meantime, here or in another window, is no news.
    if (error.code !== 'not-found')
      setState({ notice: { kind: 'error', text: error.message, wayOut: error.wayOut } });
  }
}
