import type { Database } from 'better-sqlite3';
import { prepared } from './statements.ts';

/**
 * The coat calendar of a project as last worked out. No revision and no undo: it can be worked out again. Texts are
 * JSON, written and read by those who plan.
 */
export interface StoredCalendar {
  /** The moment it is planned from, ISO 8601. */
  readonly plannedFrom: string;
  /** The secret part of the address under which calendar programs read it. */
  readonly feedToken: string;
  /** Names what it was planned from; empty before the first plan. */
  readonly question: string;
  readonly answer: string | null;
  /** What calendar programs have been told of each task, by task id. */
  readonly events: string;
  /** Tells a damaged row from a sound one. */
  readonly checkText: string;
}

const sql = {
  read: `SELECT planned_from AS plannedFrom, feed_token AS feedToken, question, answer, events, check_text AS checkText FROM calendar_answer WHERE project_id = ?`,
  put: `INSERT INTO calendar_answer (project_id, planned_from, feed_token, question, answer, events, check_text, at) VALUES (@projectId, @plannedFrom, @feedToken, @question, @answer, @events, @checkText, @at)
    ON CONFLICT (project_id) DO UPDATE SET planned_from = excluded.planned_from, feed_token = excluded.feed_token, question = excluded.question, answer = excluded.answer, events = excluded.events, check_text = excluded.check_text, at = excluded.at`,
};

export function readCalendarAnswer(db: Database, projectId: number): StoredCalendar | undefined {
  return prepared(db, sql.read).get(projectId) as StoredCalendar | undefined;
}

/** Stores a calendar in the place of the one before. */
export function putCalendarAnswer(
  db: Database,
  projectId: number,
  calendar: StoredCalendar,
  at: string,
): void {
  prepared(db, sql.put).run({ ...calendar, projectId, at });
}
