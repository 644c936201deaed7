/** Schedules the search builds for a project. A choice of ours: about a second of work for a dozen batches. */
export const PROJECT_ITERATIONS = 2500;

/** Work starts on the hour, at five past, and so on, minutes. A choice of ours. */
export const PROJECT_STEP_MIN = 5;

/** When the shop is heated, minutes after midnight: 07:00 to 21:00. An assumption of ours, which the user sees. */
export const DAY_FROM_MIN = 420;
export const NIGHT_FROM_MIN = 1260;

/** Days a calendar may reach back for what is done, so that enough of its reach is left for what is not. Ours. */
export const MOST_DAYS_BACK = 200;

/** A calendar is first tried within so many days after its start, since most jobs are over by then. Ours. */
export const NEAR_DAYS = 45;

/** Most pieces of one part and most area of one piece, m2, that the calendar takes; far above any shop's. */
export const MOST_PIECES = 100_000;
export const MOST_PIECE_M2 = 10_000;
