import type { Figure } from '../../server/planning/figure.ts';
import { ApiError, request } from './api.ts';
import { getState, setState } from './app-state.ts';
import { answerFigure } from './project-answers.ts';

/** Opens the working behind one figure. Following an input of the open working lengthens the trail; else it starts anew. */
export async function openWorking(at: string): Promise<void> {
  const open = getState().working;
  const follows = open?.figure?.working.inputs.some((input) => input.from === at) ?? false;
  await load(at, open !== null && follows ? [...open.trail, open.at] : []);
}

export function closeWorking(): void {
  setState({ working: null });
}

/** Goes one step back on the trail. */
export function backWorking(): void {
  const open = getState().working;
  const previous = open?.trail.at(-1);
  if (open === null || previous === undefined) closeWorking();
  else void load(previous, open.trail.slice(0, -1));
}

/** Fetches the open working anew after an edit, so that it never shows an old number. */
export async function refreshWorking(): Promise<void> {
  const open = getState().working;
  if (open !== null) await load(open.at, open.trail, open.figure);
}

async function load(at: string, trail: readonly string[], shown: Figure | null = null): Promise<void> {
  const projectId = getState().project?.id;
  if (projectId === undefined) return;
  const held = answerFigure(at);
  if (held !== undefined) return setState({ working: held === null ? null : { at, figure: held, trail } });
  setState({ working: { at, figure: shown, trail } });
  try {
    const path = `/api/projects/${encodeURIComponent(projectId)}/working?at=${encodeURIComponent(at)}`;
    const answer = await request<{ at: string; figure: Figure }>('GET', path);
    if (getState().working?.at === at) setState({ working: { at, figure: answer.figure, trail } });
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    if (getState().working?.at === at)
      setState({ working: null, notice: { kind: 'error', text: error.message, wayOut: error.wayOut } });
  }
}
