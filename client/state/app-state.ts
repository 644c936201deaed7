import type {
  AirAnswer,
  Attachment,
  BuyingAnswer,
  CalendarAnswer,
  Change,
  CuttingSearchAnswer,
  LedgerAnswer,
  ProjectState,
  ProjectSummary,
} from '../../server/http/contract.ts';
import type { Figure } from '../../server/planning/figure.ts';
import type { ProblemPlace } from '../../server/planning/problem.ts';
import type { Catalogue } from '../../server/planning/product.ts';
import type { ScreenName } from './route.ts';

export type { ScreenName } from './route.ts';

export type Mode = 'light' | 'dark' | 'system';

/** Something the user should know. `again` holds an edit that was not taken, so that nothing typed is lost. */
export interface Notice {
  readonly kind: 'info' | 'error' | 'stale';
  readonly text: string;
  readonly wayOut?: string;
  readonly again?: {
    readonly projectId: string;
    readonly changes: readonly Change[];
    readonly label?: string;
  };
  /** Takes back what the notice tells of, or does what it offers. */
  readonly offer?: { readonly label: string; readonly carryOut: () => void };
}

export interface AppState {
  /** starting: the first answers are not there yet. unreachable: the first request failed. */
  readonly phase: 'starting' | 'ready' | 'unreachable';
  readonly projects: readonly ProjectSummary[];
  readonly project: ProjectState | null;
  readonly catalogue: Catalogue | null;
  /** The plan of `project` is without layouts and rolls, which a screen that shows them has to ask for. */
  readonly layoutsLeftOut: boolean;
  /** How the searches for better cutting of the open project stand; null before the server has said. */
  readonly cutting: CuttingSearchAnswer | null;
  /** The coat calendar as last heard of; null before the server has said. */
  readonly calendar: CalendarAnswer | null;
  /** What is to be ordered, ordered and in stock, as last heard of; null before a screen has asked. */
  readonly buying: BuyingAnswer | null;
  /** The air check as last heard of. */
  readonly air: AirAnswer | null;
  /** The account as last heard of; null before a screen has asked. */
  readonly ledger: LedgerAnswer | null;
  /** Pictures and papers kept with the project; null before a screen has asked. */
  readonly attachments: readonly Attachment[] | null;
  readonly screen: ScreenName;
  readonly selectedPartId: string | null;
  /** The opened figure; `figure` is null while it loads. `trail`: paths walked through to get here, oldest first. */
  readonly working: {
    readonly at: string;
    readonly figure: Figure | null;
    readonly trail: readonly string[];
  } | null;
  /** The cell the user asked to be taken to; the screen that gets there calls `actions.arrived`. */
  readonly focus: ProblemPlace | null;
  readonly problemsOpen: boolean;
  readonly notice: Notice | null;
  readonly mode: Mode;
  /** Requests under way that will change the project. */
  readonly pending: number;
}

let state: AppState = {
  phase: 'starting',
  projects: [],
  project: null,
  catalogue: null,
  layoutsLeftOut: false,
  cutting: null,
  calendar: null,
  buying: null,
  air: null,
  ledger: null,
  attachments: null,
  screen: 'parts',
  selectedPartId: null,
  working: null,
  focus: null,
  problemsOpen: false,
  notice: null,
  mode: 'system',
  pending: 0,
};

const listeners = new Set<() => void>();

export function getState(): AppState {
  return state;
}

/** Calls `listener` after every change of state, until the returned function is called. */
export function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function setState(patch: Partial<AppState>): void {
  state = { ...state, ...patch };
  for (const listener of listeners) listener();
}
