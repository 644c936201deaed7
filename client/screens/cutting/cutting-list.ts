import type { CutPlace, CuttingAnswer, CuttingLayout, ProjectState } from '../../../server/http/contract.ts';
import { ApiError, request } from '../../state/api.ts';
import { inTurn } from '../../state/in-turn.ts';
import { projectPath } from '../../state/project-actions.ts';
import { actions, getState } from '../../state/store.ts';

/** The saw cuts and ticks of the plan on screen, fetched when the plan is another. */

let held: { readonly projectId: string; readonly answer: CuttingAnswer } | null = null;
let askedFor: ProjectState['plan']['materials'] | null = null;

/** What is known of the project's cuts; asks for them when the plan has changed, and draws again when they are there. */
export function cuttingListOf(project: ProjectState): CuttingAnswer | null {
  if (askedFor !== project.plan.materials) {
    askedFor = project.plan.materials;
    void fetchList(project.id);
  }
  return held?.projectId === project.id ? held.answer : null;
}

/** A layout's cuts and ticks; null until they are there for just these pieces. */
export function cutsOfLayout(
  list: CuttingAnswer | null,
  materialId: string,
  layoutId: string,
  parts: readonly string[],
): CuttingLayout | null {
  const found = list?.layouts.find((one) => one.materialId === materialId && one.layoutId === layoutId);
  return found !== undefined && found.parts.join() === parts.join() ? found : null;
}

/** Ticks pieces as cut or takes the ticks off; shown at once, and put right when the server refuses. */
export async function tick(layout: CuttingLayout, pieces: readonly CutPlace[], cut: boolean): Promise<void> {
  const projectId = getState().project?.id;
  if (projectId === undefined || held === null) return;
  const { key } = layout;
  const changed = new Set(pieces.map(placeName));
  const kept = layout.done.filter((place) => !changed.has(placeName(place)));
  const done = cut ? [...kept, ...pieces] : kept;
  held = {
    projectId,
    answer: {
      ...held.answer,
      layouts: held.answer.layouts.map((one) => (one.key === key ? { ...one, done } : one)),
    },
  };
  actions.redraw();
  const turn = ++turns;
  try {
    const answer = await inTurn(() =>
      request<CuttingAnswer>('POST', projectPath(projectId, 'cutting/ticks'), { layout: key, pieces, cut }),
    );
    take(projectId, answer, turn);
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    actions.say({ kind: 'error', text: error.message, wayOut: error.wayOut });
    await fetchList(projectId);
  }
}

/** Requests sent so far. While a later one is under way, the screen knows more than an earlier answer. */
let turns = 0;

export function placeName({ sheet, piece }: CutPlace): string {
  return `${sheet}/${piece}`;
}

async function fetchList(projectId: string): Promise<void> {
  const turn = ++turns;
  try {
    take(projectId, await request<CuttingAnswer>('GET', projectPath(projectId, 'cutting')), turn);
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    actions.say({ kind: 'error', text: error.message, wayOut: error.wayOut });
  }
}

function take(projectId: string, answer: CuttingAnswer, turn: number): void {
  if (getState().project?.id !== projectId || turn < turns) return;
  held = { projectId, answer };
  actions.redraw();
}

// Ticks made on another device are there when one comes back to this one.
addEventListener('visibilitychange', () => {
  const { project, screen } = getState();
  if (document.visibilityState === 'visible' && project !== null && screen === 'cutting')
    void fetchList(project.id);
});
