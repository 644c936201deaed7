/** How calendars are worked out beside the editing. */
export interface CalendarSettings {
  /** Rest after an edit before a calendar is worked out anew, ms: whoever types goes on typing. */
  readonly restMs: number;
  /** Longest time one calendar may take, ms; then its thread is ended. */
  readonly longestMs: number;
}

export const DEFAULT_CALENDAR: CalendarSettings = { restMs: 400, longestMs: 120_000 };

/** A calendar that nobody waits for any more is given so long to end by itself before its thread is ended, ms. Ours. */
export const PATIENCE_MS = 1500;

/** A thread without work is let go after this, ms. Ours. */
export const IDLE_MS = 60_000;

/** Nothing new is planned before the next multiple of this, minutes. */
export const FROM_STEP_MIN = 5;

/** Days shown after the last thing a plan has to say, and where there is no plan. Ours. */
export const DAYS_AFTER = 2;
export const DAYS_WITHOUT_PLAN = 14;
