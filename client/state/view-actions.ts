import type { ProblemPlace, ProblemTable } from '../../server/planning/problem.ts';
import { getState, type Mode, type Notice, setState } from './app-state.ts';
import { type ScreenName, writeRoute } from './route.ts';

const MODE_KEY = 'plywright.mode';

/** The screen on which the rows of a table are edited. */
const SCREEN_OF_TABLE = {
  parts: 'parts',
  document: 'parts',
  recipes: 'finish',
  steps: 'finish',
  blends: 'finish',
  components: 'finish',
  rules: 'finish',
  extras: 'buy',
  onHand: 'buy',
  measurements: 'settings',
  sizes: 'settings',
  shopHours: 'calendar',
  daysOff: 'calendar',
  climateRows: 'calendar',
  pins: 'calendar',
  doneTasks: 'calendar',
  arrivals: 'calendar',
  budgets: 'ledger',
  orders: 'buy',
  orderLines: 'buy',
  receipts: 'buy',
  stockUses: 'buy',
  payments: 'ledger',
  substitutes: 'buy',
  workHours: 'ledger',
  quotes: 'quotes',
  suppliers: 'catalogue',
  settings: 'settings',
  products: 'catalogue',
} as const satisfies Record<ProblemTable, ScreenName>;

/** Settings that are typed on the calendar screen. */
const CALENDAR_SETTINGS: ReadonlySet<string> = new Set([
  'calendar',
  'pins',
  'done',
  'startDate',
  'timeZone',
  'hands',
  'rackM2',
  'largestBatchM2',
  'sandsApart',
  'woodWarmerC',
  'dryingDoublesPerC',
  'dryingUsesHumidity',
  'climateKind',
  'dayC',
  'nightC',
  'dayHumidity',
  'nightHumidity',
]);

/** Settings that are typed on the air screen. */
const AIR_SETTINGS: ReadonlySet<string> = new Set([
  'roomLengthM',
  'roomWidthM',
  'roomHeightM',
  'airKind',
  'fanM3PerHour',
  'fanDerating',
  'airChangesPerHour',
  'openingM2',
  'windMPerS',
  'mixingFactor',
  'outdoorC',
  'heatPricePerKwhMinor',
  'healthBasis',
  'keepUnderHealthLimit',
]);

export function show(screen: ScreenName): void {
  const { project } = getState();
  setState({ screen });
  if (project !== null) {
    const hash = writeRoute({ projectId: project.id, screen });
    if (location.hash !== hash) history.pushState(null, '', hash);
  }
}

export function selectPart(id: string | null): void {
  if (getState().selectedPartId !== id) setState({ selectedPartId: id });
}

export function showProblems(open: boolean): void {
  setState({ problemsOpen: open });
}

/** Takes the user to the cell a problem sits in. */
export function goTo(place: ProblemPlace): void {
  setState({ focus: place });
  show(screenOf(place));
}

/** Settings that are typed on the ledger screen. */
const LEDGER_SETTINGS: ReadonlySet<string> = new Set([
  'contingencyPercent',
  'rateMinorPerHour',
  'readyMadeMinor',
]);

function screenOf({ table, field }: ProblemPlace): ScreenName {
  if (table === 'settings' && CALENDAR_SETTINGS.has(field ?? '')) return 'calendar';
  if (table === 'settings' && LEDGER_SETTINGS.has(field ?? '')) return 'ledger';
  if (table === 'settings' && AIR_SETTINGS.has(field ?? '')) return 'air';
  return SCREEN_OF_TABLE[table];
}

/** Said by the screen that has put the keyboard focus where `goTo` asked. */
export function arrived(): void {
  if (getState().focus !== null) setState({ focus: null });
}

export function setMode(mode: Mode): void {
  localStorage.setItem(MODE_KEY, mode);
  showMode(mode);
}

export function restoreMode(): void {
  const stored = localStorage.getItem(MODE_KEY);
  showMode(stored === 'light' || stored === 'dark' ? stored : 'system');
}

/** Tells the user something. An edit that waits in the notice to be applied again is not pushed out by a mere word. */
export function say(notice: Notice): void {
  if (notice.kind === 'info' && getState().notice?.again !== undefined) return;
  setState({ notice });
}

export function dismissNotice(): void {
  setState({ notice: null });
}

/** Draws the screens again after something outside the store changed, such as code that has arrived. */
export function redraw(): void {
  setState({});
}

function showMode(mode: Mode): void {
  document.documentElement.dataset.mode = mode;
  setState({ mode });
}
