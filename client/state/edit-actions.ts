import type { Change, ChangeAnswer } from '../../server/http/contract.ts';
import { ApiError, request } from './api.ts';
import { getState, type Notice, setState } from './app-state.ts';
import { applyAnswer } from './apply-answer.ts';
import { inTurn } from './in-turn.ts';
import { fetchProject, openProject, projectPath } from './project-actions.ts';
import { refreshWorking } from './working-actions.ts';

/**
 * Sends one edit to a project, the open one unless said. Null when it was refused; the notice then says why and keeps
 * what was typed.
 */
export function change(
  changes: readonly Change[],
  label?: string,
  projectId: string | undefined = getState().project?.id,
): Promise<ChangeAnswer | null> {
  if (projectId === undefined || changes.length === 0) return Promise.resolve(null);
  const again = label === undefined ? { projectId, changes } : { projectId, changes, label };
  return edit(projectId, 'changes', label === undefined ? { changes } : { changes, label }, again);
}

/** Puts the offcuts of one size from one cut sheet of the open project among what is on hand. */
export function keepOffcut(offcut: {
  readonly layout: string;
  readonly sheet: number;
  readonly lengthMm: number;
  readonly widthMm: number;
}): Promise<ChangeAnswer | null> {
  const projectId = getState().project?.id;
  return projectId === undefined ? Promise.resolve(null) : edit(projectId, 'cutting/keep', offcut, undefined);
}

export async function undo(): Promise<void> {
  const project = getState().project;
  if (project?.canUndo || getState().pending > 0) await step('undo');
}

export async function redo(): Promise<void> {
  const project = getState().project;
  if (project?.canRedo || getState().pending > 0) await step('redo');
}

/** Sends the edits the notice kept once more, on top of the newest revision. */
export async function applyAgain(): Promise<void> {
  const again = getState().notice?.again;
  setState({ notice: null });
  if (again === undefined) return;
  if (again.projectId !== getState().project?.id) await openProject(again.projectId);
  await change(again.changes, again.label);
}

async function step(direction: 'undo' | 'redo'): Promise<void> {
  const project = getState().project;
  if (project === null) return;
  const words = direction === 'undo' ? project.undoLabel : project.redoLabel;
  const answer = await edit(project.id, direction, {}, undefined);
  if (answer !== null && words !== null)
    setState({
      notice: { kind: 'info', text: direction === 'undo' ? `Undone: ${words}.` : `Done again: ${words}.` },
    });
}

function edit(
  projectId: string,
  route: string,
  body: object,
  again: Notice['again'],
): Promise<ChangeAnswer | null> {
  return inTurn(async () => {
    const project = getState().project;
    if (project === null || project.id !== projectId) {
      keepForOtherProject(again);
      return null;
    }
    try {
      const answer = await request<ChangeAnswer>('POST', projectPath(projectId, route), {
        revision: project.revision,
        ...body,
      });
      take(answer);
      return answer;
    } catch (error) {
      await refused(error, projectId, again);
      return null;
    }
  });
}

function take(answer: ChangeAnswer): void {
  const { project, projects } = getState();
  if (project === null) return;
  const { name, units, currency } = answer.settings;
  setState({
    project: applyAnswer(project, answer),
    layoutsLeftOut: answer.layoutsLeftOut,
    projects: projects.map((one) =>
      one.id === project.id ? { ...one, name, units, currency, revision: answer.revision } : one,
    ),
  });
  void refreshWorking();
}

function keepForOtherProject(again: Notice['again']): void {
  if (again === undefined) return;
  setState({
    notice: {
      kind: 'stale',
      text: 'Your last entry belongs to a project that is no longer open.',
      wayOut: 'Apply again opens that project and makes the entry there.',
      again,
    },
  });
}

/** Keeps what was typed: in the notice, together with earlier edits that are still waiting there. */
async function refused(error: unknown, projectId: string, again: Notice['again']): Promise<void> {
  if (!(error instanceof ApiError)) throw error;
  if (error.code === 'revision-stale') await fetchProject(projectId).catch(() => undefined);
  const waiting = getState().notice?.again;
  const kept =
    again !== undefined && waiting?.projectId === projectId
      ? { ...again, changes: [...waiting.changes, ...again.changes] }
      : again;
  const text =
    error.code === 'revision-stale'
      ? 'The project was changed in another window just before. Its newest state is shown; your last edit was not applied.'
      : error.message;
  const wayOut =
    error.code === 'revision-stale'
      ? 'Look at what changed, then apply your edit again if it still fits.'
      : error.wayOut;
  const kind = error.code === 'revision-stale' ? 'stale' : 'error';
  // A request the server could not even read will not be read the second time either.
  const worthRepeating = error.code !== 'bad-request' && kept !== undefined;
  setState({ notice: worthRepeating ? { kind, text, wayOut, again: kept } : { kind, text, wayOut } });
}
