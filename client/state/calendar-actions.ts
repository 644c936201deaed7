import type { CalendarAnswer } from '../../server/http/contract.ts';
import { ApiError, request } from './api.ts';
import { getState, setState } from './app-state.ts';

/** What was asked for last, so that a screen may ask with every drawing. */
let asked = '';
/** So long a plan is waited for before it is asked for again, should the server's word of it have been missed. */
const ASK_AGAIN_MS = 1500;
/** Requests are counted, so that of two answers the one asked for later is kept, however they arrive. */
let requests = 0;

/** Asks for the calendar of the project as it is, once per revision; called by the screens that show it. */
export function wantCalendar(): void {
  const { project, calendar } = getState();
  if (project === null || (calendar !== null && calendar.revision >= project.revision)) return;
  const question = `${project.id} ${project.revision}`;
  if (question === asked) return;
  asked = question;
  void fetchCalendar(project.id);
}

export async function fetchCalendar(projectId: string): Promise<void> {
  const number = ++requests;
  try {
    const answer = await request<CalendarAnswer>('GET', path(projectId));
    if (number === requests) hearCalendar(projectId, answer);
  } catch (error) {
    asked = '';
    report(error);
  }
}

function hearCalendar(projectId: string, answer: CalendarAnswer): void {
  if (getState().project?.id !== projectId) return;
  setState({ calendar: answer });
  // A plan that is ready before the stream of events has begun is not told of.
  if (answer.state === 'working')
    setTimeout(() => {
      if (getState().calendar === answer) void fetchCalendar(projectId);
    }, ASK_AGAIN_MS);
}

/** Plans everything that is not done yet anew, from this minute on. */
export async function planCalendarFromNow(): Promise<void> {
  const id = getState().project?.id;
  if (id === undefined) return;
  try {
    requests++;
    hearCalendar(id, await request<CalendarAnswer>('POST', `${path(id)}/replan`, {}));
  } catch (error) {
    report(error);
  }
}

function report(error: unknown): void {
  if (!(error instanceof ApiError)) throw error;
  setState({ notice: { kind: 'error', text: error.message, wayOut: error.wayOut } });
}

function path(projectId: string): string {
  return `/api/projects/${encodeURIComponent(projectId)}/calendar`;
}
