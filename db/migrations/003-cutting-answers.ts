import type { Migration } from '../migrate.ts';

/** Cutting plans found by a longer search, and the advice worked out beside them. Frozen. */
export const cuttingAnswers: Migration = {
  name: '003-cutting-answers',
  up: (db) =>
    db.exec(`
CREATE TABLE cutting_answer (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  question TEXT NOT NULL,
  sheets TEXT NOT NULL,
  bound_cost REAL NOT NULL,
  bound_stocks INTEGER NOT NULL,
  runs INTEGER NOT NULL,
  searched_ms INTEGER NOT NULL,
  complete INTEGER NOT NULL CHECK (complete IN (0, 1)),
  advice_for TEXT,
  advice TEXT,
  check_text TEXT NOT NULL,
  at TEXT NOT NULL,
  UNIQUE (project_id, question)
) STRICT;
`),
};
