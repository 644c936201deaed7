import type { Database } from 'better-sqlite3';
import { prepared } from './statements.ts';

/**
 * What longer searches have found for the cutting questions of a project. No revision and no undo: an answer belongs
 * to its question, and the same edit brings both back. Texts are JSON, written and read by those who search.
 */
export interface StoredCuttingAnswer {
  readonly question: string;
  readonly sheets: string;
  readonly boundCost: number;
  readonly boundStocks: number;
  /** How many searches there have been. */
  readonly runs: number;
  readonly searchedMs: number;
  /** Nothing is left to try. */
  readonly complete: boolean;
  /** What the advice was worked out from; null before it was. */
  readonly adviceFor: string | null;
  readonly advice: string | null;
  /** Tells a damaged row from a sound one. */
  readonly checkText: string;
}

const sql = {
  ofProject: `SELECT question, sheets, bound_cost AS boundCost, bound_stocks AS boundStocks, runs, searched_ms AS searchedMs, complete, advice_for AS adviceFor, advice, check_text AS checkText FROM cutting_answer WHERE project_id = ? ORDER BY cutting_answer.id`,
  put: `INSERT INTO cutting_answer (project_id, question, sheets, bound_cost, bound_stocks, runs, searched_ms, complete, advice_for, advice, check_text, at) VALUES (@projectId, @question, @sheets, @boundCost, @boundStocks, @runs, @searchedMs, @complete, @adviceFor, @advice, @checkText, @at)
    ON CONFLICT (project_id, question) DO UPDATE SET sheets = excluded.sheets, bound_cost = excluded.bound_cost, bound_stocks = excluded.bound_stocks, runs = excluded.runs, searched_ms = excluded.searched_ms, complete = excluded.complete, advice_for = excluded.advice_for, advice = excluded.advice, check_text = excluded.check_text, at = excluded.at`,
  remove: `DELETE FROM cutting_answer WHERE project_id = ? AND question = ?`,
};

/** Those that were first stored long ago come first. */
export function readCuttingAnswers(db: Database, projectId: number): StoredCuttingAnswer[] {
  const rows = prepared(db, sql.ofProject).all(projectId) as (Omit<StoredCuttingAnswer, 'complete'> & {
    readonly complete: number;
  })[];
  return rows.map((row) => ({ ...row, complete: row.complete === 1 }));
}

/** Stores an answer in the place of an earlier one to the same question. */
export function putCuttingAnswer(
  db: Database,
  projectId: number,
  answer: StoredCuttingAnswer,
  at: string,
): void {
  prepared(db, sql.put).run({ ...answer, complete: answer.complete ? 1 : 0, projectId, at });
}

export function removeCuttingAnswer(db: Database, projectId: number, question: string): void {
  prepared(db, sql.remove).run(projectId, question);
}
