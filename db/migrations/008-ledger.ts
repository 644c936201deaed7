import type { Migration } from '../migrate.ts';

/** Orders, deliveries, stock, payments, quotes and what goes with them. Frozen. */
export const ledger: Migration = {
  name: '008-ledger',
  up: (db) =>
    db.exec(`
ALTER TABLE project ADD COLUMN contingency_percent REAL NOT NULL DEFAULT 0;
ALTER TABLE project ADD COLUMN rate_minor_per_hour INTEGER;
ALTER TABLE project ADD COLUMN ready_made_minor INTEGER;

ALTER TABLE supplier ADD COLUMN currency TEXT NOT NULL DEFAULT '';
ALTER TABLE supplier ADD COLUMN delivery_minor INTEGER;
ALTER TABLE supplier ADD COLUMN free_delivery_from_minor INTEGER;
ALTER TABLE supplier ADD COLUMN minimum_order_minor INTEGER;
ALTER TABLE supplier ADD COLUMN surcharge_minor INTEGER;
ALTER TABLE supplier ADD COLUMN working_days TEXT NOT NULL DEFAULT '0,1,2,3,4';
ALTER TABLE supplier ADD COLUMN retired INTEGER NOT NULL DEFAULT 0 CHECK (retired IN (0, 1));

ALTER TABLE on_hand ADD COLUMN place TEXT NOT NULL DEFAULT '';
ALTER TABLE on_hand ADD COLUMN batch TEXT NOT NULL DEFAULT '';
ALTER TABLE on_hand ADD COLUMN opened_on TEXT NOT NULL DEFAULT '';
ALTER TABLE on_hand ADD COLUMN best_before TEXT NOT NULL DEFAULT '';

CREATE TABLE budget (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  category TEXT NOT NULL,
  amount_minor INTEGER NOT NULL
) STRICT;
CREATE INDEX budget_by_project ON budget (project_id, position);

CREATE TABLE purchase_order (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  supplier_id TEXT NOT NULL,
  date TEXT NOT NULL,
  number TEXT NOT NULL,
  delivery_minor INTEGER NOT NULL,
  surcharge_minor INTEGER NOT NULL,
  tax_percent REAL,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX purchase_order_by_project ON purchase_order (project_id, position);

CREATE TABLE order_line (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  order_id INTEGER NOT NULL REFERENCES purchase_order (id) ON DELETE CASCADE,
  product_id TEXT NOT NULL,
  pack_id TEXT NOT NULL,
  name TEXT NOT NULL,
  category TEXT NOT NULL,
  count INTEGER NOT NULL,
  pack_amount REAL NOT NULL,
  unit_price_minor INTEGER,
  invoiced_price_minor INTEGER,
  tax_percent REAL
) STRICT;
CREATE INDEX order_line_by_project ON order_line (project_id, position);
CREATE INDEX order_line_by_order ON order_line (order_id);

CREATE TABLE receipt (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  order_line_id INTEGER NOT NULL REFERENCES order_line (id) ON DELETE CASCADE,
  kind TEXT NOT NULL,
  date TEXT NOT NULL,
  count INTEGER NOT NULL,
  batch TEXT NOT NULL,
  place TEXT NOT NULL
) STRICT;
CREATE INDEX receipt_by_project ON receipt (project_id, position);
CREATE INDEX receipt_by_order_line ON receipt (order_line_id);

CREATE TABLE stock_use (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  product_id TEXT NOT NULL,
  date TEXT NOT NULL,
  amount REAL NOT NULL,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX stock_use_by_project ON stock_use (project_id, position);

CREATE TABLE payment (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  kind TEXT NOT NULL,
  date TEXT NOT NULL,
  supplier_id TEXT NOT NULL,
  order_id TEXT NOT NULL,
  category TEXT NOT NULL,
  amount_minor INTEGER NOT NULL,
  tax_minor INTEGER,
  share REAL NOT NULL,
  receipt_number TEXT NOT NULL,
  note TEXT NOT NULL,
  attachment_id TEXT NOT NULL
) STRICT;
CREATE INDEX payment_by_project ON payment (project_id, position);

CREATE TABLE substitute (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  product_id TEXT NOT NULL,
  substitute_id TEXT NOT NULL
) STRICT;
CREATE INDEX substitute_by_project ON substitute (project_id, position);

CREATE TABLE work_hours (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  date TEXT NOT NULL,
  hours REAL NOT NULL,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX work_hours_by_project ON work_hours (project_id, position);

CREATE TABLE quote (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  title TEXT NOT NULL,
  customer TEXT NOT NULL,
  date TEXT NOT NULL,
  valid_until TEXT NOT NULL,
  materials_minor INTEGER,
  hours REAL NOT NULL,
  rate_minor_per_hour INTEGER,
  markup_percent REAL NOT NULL,
  tax_percent REAL,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX quote_by_project ON quote (project_id, position);

CREATE TABLE attachment (
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  id TEXT NOT NULL,
  name TEXT NOT NULL,
  type TEXT NOT NULL,
  bytes INTEGER NOT NULL,
  at TEXT NOT NULL,
  PRIMARY KEY (project_id, id)
) STRICT, WITHOUT ROWID;
`),
};
