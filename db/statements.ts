import type { Database, Statement } from 'better-sqlite3';

const cached = new WeakMap<Database, Map<string, Statement>>();

/** The statement prepared for `sql` on this connection; prepared once and kept as long as the connection lives. */
export function prepared(db: Database, sql: string): Statement {
  let ofConnection = cached.get(db);
  if (ofConnection === undefined) {
    ofConnection = new Map();
    cached.set(db, ofConnection);
  }
  let statement = ofConnection.get(sql);
  if (statement === undefined) {
    statement = db.prepare(sql);
    ofConnection.set(sql, statement);
  }
  return statement;
}
