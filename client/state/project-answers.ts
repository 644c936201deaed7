import type { AirAnswer, Attachment, BuyingAnswer, LedgerAnswer } from '../../server/http/contract.ts';
import type { Figure } from '../../server/planning/figure.ts';
import { ApiError, request } from './api.ts';
import { getState, setState } from './app-state.ts';
import { figureIn } from './figure-in.ts';

/** Answers about the open project that are fetched only for the screens that show them. */
interface Answers {
  readonly buying: BuyingAnswer;
  readonly ledger: LedgerAnswer;
  readonly attachments: readonly Attachment[];
  readonly air: AirAnswer;
}
type Name = keyof Answers;
/** Those whose figures carry their workings; the others' are asked for as the plan's are. */
export const ANSWER_NAMES = ['buying', 'ledger', 'attachments'] as const satisfies readonly Name[];

/** What each was last asked about: these very objects are replaced whenever what the answer depends on has changed. */
const asked: Record<Name, readonly unknown[]> = { buying: [], ledger: [], attachments: [], air: [] };
/** Some request went wrong; it is made again when the server is heard of again. */
let failed = false;
/** Raised by what no object of the state shows: a new coat calendar. */
let calendars = 0;

/** Asks for an answer about the project as it is now, once; called by a screen whenever it is drawn. */
export function wantAnswer(name: Name): void {
  const { project, catalogue } = getState();
  if (project === null) return;
  const question = [project, catalogue, calendars];
  if (question.every((part, index) => part === asked[name][index])) return;
  asked[name] = question;
  void fetchAnswer(name, project.id);
}

/** A new calendar changes when things are needed. Screens that show answers ask anew when they are drawn. */
export function calendarChanged(): void {
  calendars += 1;
  setState({});
}

/** Asks again for what could not be had; called when a stream of events begins. */
export function askAgain(): void {
  if (!failed) return;
  failed = false;
  for (const name of Object.keys(asked) as Name[]) asked[name] = [];
  setState({});
}

async function fetchAnswer(name: Name, projectId: string): Promise<void> {
  const question = asked[name];
  try {
    const answer = await request<Answers[Name]>(
      'GET',
      `/api/projects/${encodeURIComponent(projectId)}/${name}`,
    );
    if (getState().project?.id !== projectId || asked[name] !== question) return;
    setState({ [name]: answer });
    if (name !== 'air') showInWorking(name);
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    if (asked[name] !== question) return;
    // Not asked again with the next drawing, which would fail in the same way.
    failed = true;
    setState({ notice: { kind: 'error', text: error.message, wayOut: error.wayOut } });
  }
}

/** The figure a path such as `ledger/headings/finish/paid` names; undefined where the path is not about an answer. */
export function answerFigure(at: string): Figure | null | undefined {
  const [name, ...steps] = at.split('/');
  const known = ANSWER_NAMES.find((one) => one === name);
  return known === undefined ? undefined : figureIn(getState()[known], steps);
}

/** An open working shows the new number, and closes when what it was about is gone. */
function showInWorking(name: Name): void {
  const { working } = getState();
  if (working === null || !working.at.startsWith(`${name}/`)) return;
  const figure = answerFigure(working.at) ?? null;
  setState({ working: figure === null ? null : { ...working, figure } });
}
