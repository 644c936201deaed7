/**
 * The newest layout, as a fresh file gets it. `db/migrations/` leads older files to the same layout: change both in
 * one commit, together with `schema.snapshot.sql`, which the tests compare to both.
 *
 * - Lists of a project share four columns: `id` (never used twice, so that undo can bring a row back under its own
 *   id), `project_id`, `position` (any number; a row moved between two others gets one between theirs) and the fields.
 * - A length cell is two columns: the text as typed, and the millimetres it reads as (NULL when it is an
 *   expression, or not a plain readable length). Money is whole minor units.
 * - A part's material, edges and recipes, and a step's product and blend, are text without a foreign key: what was
 *   typed stays typed, and the plan reports what it cannot find.
 * - `cut_piece` holds the pieces ticked as cut: which layout (by its key), which of its sheets, which of its parts. It is
 *   no part of the edit log: sawing cannot be undone. `begun_layout` holds what those layouts were, so that a plan made
 *   later can keep them as they are cut. `on_hand.kept_from` names the sheet an offcut was cut from: it is put in stock
 *   once, and is no stock while no piece of that sheet is ticked.
 * - `edit` holds every edit with the rows before and after. `done` can be undone, `undone` can be redone, `dropped`
 *   was undone and then followed by another edit.
 * - `cutting_answer` holds the best cutting plan found for each question asked. It can be worked out again, so it has no
 *   history, and a row that is damaged is thrown away.
 * - `calendar_answer` holds a project's coat calendar as last worked out, the moment it is planned from, and the secret
 *   part of the address under which other programs may read it. No history either.
 * - `attachment` names the pictures and papers kept beside the database, by the hash of what they hold.
 */
export const SCHEMA_SQL = `
CREATE TABLE catalogue_state (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  revision INTEGER NOT NULL
) STRICT;

CREATE TABLE supplier (
  id TEXT NOT NULL PRIMARY KEY,
  name TEXT NOT NULL,
  lead_time_days REAL,
  currency TEXT NOT NULL DEFAULT '',
  delivery_minor INTEGER,
  free_delivery_from_minor INTEGER,
  minimum_order_minor INTEGER,
  surcharge_minor INTEGER,
  working_days TEXT NOT NULL DEFAULT '0,1,2,3,4',
  retired INTEGER NOT NULL DEFAULT 0 CHECK (retired IN (0, 1))
) STRICT, WITHOUT ROWID;

CREATE TABLE product (
  position INTEGER PRIMARY KEY AUTOINCREMENT,
  id TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL,
  name TEXT NOT NULL,
  short_name TEXT NOT NULL COLLATE NOCASE UNIQUE,
  unit TEXT NOT NULL CHECK (unit IN ('pcs', 'm', 'L', 'g')),
  species TEXT,
  deducted TEXT,
  band_material TEXT,
  role TEXT,
  carrier TEXT,
  colour TEXT,
  hardener_id TEXT,
  mix_base REAL,
  mix_hardener REAL,
  grit REAL,
  nominal TEXT,
  rags TEXT,
  recoat_basis TEXT,
  recoat_source TEXT,
  recoat_read_on TEXT,
  recoat_note TEXT,
  retired INTEGER NOT NULL CHECK (retired IN (0, 1)),
  origin TEXT NOT NULL CHECK (origin IN ('shipped', 'user')),
  note TEXT,
  solvents_basis TEXT,
  solvents_source TEXT,
  solvents_read_on TEXT,
  solvents_note TEXT
) STRICT;

CREATE TABLE product_figure (
  product_id TEXT NOT NULL REFERENCES product (id),
  name TEXT NOT NULL,
  low REAL,
  typical REAL,
  high REAL,
  unit TEXT NOT NULL,
  basis TEXT NOT NULL,
  source TEXT NOT NULL,
  read_on TEXT,
  note TEXT,
  PRIMARY KEY (product_id, name)
) STRICT, WITHOUT ROWID;

CREATE TABLE recoat_interval (
  product_id TEXT NOT NULL REFERENCES product (id),
  position INTEGER NOT NULL,
  from_min REAL NOT NULL,
  to_min REAL,
  scuff INTEGER NOT NULL CHECK (scuff IN (0, 1)),
  PRIMARY KEY (product_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE product_solvent (
  product_id TEXT NOT NULL REFERENCES product (id),
  position INTEGER NOT NULL,
  solvent_id TEXT NOT NULL,
  share REAL,
  molar_mass_g_per_mol REAL,
  lel_percent REAL,
  limit_mg_per_m3 REAL,
  PRIMARY KEY (product_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE pack (
  product_id TEXT NOT NULL REFERENCES product (id),
  position INTEGER NOT NULL,
  id TEXT NOT NULL,
  label TEXT NOT NULL,
  amount REAL NOT NULL,
  length_mm REAL,
  width_mm REAL,
  price_minor INTEGER,
  currency TEXT NOT NULL,
  supplier_id TEXT REFERENCES supplier (id),
  basis TEXT NOT NULL,
  source TEXT NOT NULL,
  read_on TEXT,
  note TEXT,
  PRIMARY KEY (product_id, position),
  UNIQUE (product_id, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE project (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  revision INTEGER NOT NULL,
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  units TEXT NOT NULL CHECK (units IN ('metric', 'us')),
  inch_style TEXT NOT NULL CHECK (inch_style IN ('fraction', 'decimal')),
  inch_denominator INTEGER NOT NULL,
  currency TEXT NOT NULL,
  tax_percent REAL,
  coverage_choice TEXT NOT NULL CHECK (coverage_choice IN ('low', 'typical', 'high')),
  overhang_mm REAL NOT NULL,
  trim_allowance_mm REAL NOT NULL,
  spare_strips INTEGER NOT NULL,
  banding_order TEXT NOT NULL,
  kerf_mm REAL NOT NULL,
  sheet_trim_mm REAL NOT NULL,
  finish_loss REAL NOT NULL,
  start_date TEXT NOT NULL DEFAULT '',
  time_zone TEXT NOT NULL DEFAULT 'UTC',
  hands INTEGER NOT NULL DEFAULT 1,
  rack_m2 REAL,
  largest_batch_m2 REAL,
  sands_apart INTEGER NOT NULL DEFAULT 0 CHECK (sands_apart IN (0, 1)),
  wood_warmer_c REAL NOT NULL DEFAULT 0,
  drying_doubles_per_c REAL NOT NULL DEFAULT 10,
  drying_uses_humidity INTEGER NOT NULL DEFAULT 1 CHECK (drying_uses_humidity IN (0, 1)),
  climate_kind TEXT NOT NULL DEFAULT 'day-night' CHECK (climate_kind IN ('constant', 'day-night', 'hourly')),
  day_c REAL NOT NULL DEFAULT 20,
  night_c REAL NOT NULL DEFAULT 15,
  day_humidity REAL NOT NULL DEFAULT 50,
  night_humidity REAL NOT NULL DEFAULT 65,
  keep_under_health_limit INTEGER NOT NULL DEFAULT 0 CHECK (keep_under_health_limit IN (0, 1)),
  room_length_m REAL,
  room_width_m REAL,
  room_height_m REAL,
  air_kind TEXT NOT NULL DEFAULT 'fan' CHECK (air_kind IN ('fan', 'air-changes', 'opening')),
  fan_m3_per_hour REAL,
  fan_derating REAL NOT NULL DEFAULT 0.5,
  air_changes_per_hour REAL,
  opening_m2 REAL,
  wind_m_per_s REAL NOT NULL DEFAULT 1,
  mixing_factor REAL NOT NULL DEFAULT 3,
  outdoor_c REAL,
  heat_price_per_kwh_minor REAL,
  health_basis TEXT NOT NULL DEFAULT 'peak' CHECK (health_basis IN ('peak', 'averages')),
  cut_stages INTEGER CHECK (cut_stages IN (2, 3)),
  contingency_percent REAL NOT NULL DEFAULT 0,
  rate_minor_per_hour INTEGER,
  ready_made_minor INTEGER
) STRICT;

CREATE TABLE part (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  name TEXT NOT NULL,
  section TEXT NOT NULL,
  quantity TEXT NOT NULL,
  length TEXT NOT NULL,
  length_mm REAL,
  width TEXT NOT NULL,
  width_mm REAL,
  shape TEXT NOT NULL CHECK (shape IN ('rectangle', 'round')),
  material_id TEXT NOT NULL,
  grain TEXT NOT NULL CHECK (grain IN ('along', 'across', 'free')),
  edge_front TEXT NOT NULL,
  edge_back TEXT NOT NULL,
  edge_left TEXT NOT NULL,
  edge_right TEXT NOT NULL,
  radius_front_left TEXT NOT NULL,
  radius_front_left_mm REAL,
  radius_front_right TEXT NOT NULL,
  radius_front_right_mm REAL,
  radius_back_left TEXT NOT NULL,
  radius_back_left_mm REAL,
  radius_back_right TEXT NOT NULL,
  radius_back_right_mm REAL,
  show_recipe_id TEXT NOT NULL,
  back_recipe_id TEXT NOT NULL,
  note TEXT NOT NULL,
  grain_match TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX part_by_project ON part (project_id, position);

CREATE TABLE recipe (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  name TEXT NOT NULL,
  faces TEXT NOT NULL CHECK (faces IN ('flip', 'points'))
) STRICT;
CREATE INDEX recipe_by_project ON recipe (project_id, position);

CREATE TABLE recipe_step (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  recipe_id INTEGER NOT NULL REFERENCES recipe (id) ON DELETE CASCADE,
  kind TEXT NOT NULL,
  product_id TEXT NOT NULL,
  blend_id TEXT NOT NULL,
  coats INTEGER NOT NULL,
  method TEXT NOT NULL,
  transfer_efficiency REAL,
  thinning REAL NOT NULL,
  thinner_id TEXT NOT NULL,
  session_loss_l REAL,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX recipe_step_by_project ON recipe_step (project_id, position);
CREATE INDEX recipe_step_by_recipe ON recipe_step (recipe_id);

CREATE TABLE blend (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  name TEXT NOT NULL
) STRICT;
CREATE INDEX blend_by_project ON blend (project_id, position);

CREATE TABLE blend_component (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  blend_id INTEGER NOT NULL REFERENCES blend (id) ON DELETE CASCADE,
  product_id TEXT NOT NULL,
  parts REAL NOT NULL
) STRICT;
CREATE INDEX blend_component_by_project ON blend_component (project_id, position);
CREATE INDEX blend_component_by_blend ON blend_component (blend_id);

CREATE TABLE usage_rule (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  product_id TEXT NOT NULL,
  per TEXT NOT NULL,
  rate REAL
) STRICT;
CREATE INDEX usage_rule_by_project ON usage_rule (project_id, position);

CREATE TABLE extra_line (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  product_id TEXT NOT NULL,
  name TEXT NOT NULL,
  category TEXT NOT NULL,
  quantity REAL NOT NULL,
  unit_price_minor INTEGER,
  supplier_id TEXT NOT NULL
) STRICT;
CREATE INDEX extra_line_by_project ON extra_line (project_id, position);

CREATE TABLE on_hand (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  product_id TEXT NOT NULL,
  amount REAL NOT NULL,
  count INTEGER NOT NULL,
  length_mm REAL,
  width_mm REAL,
  place TEXT NOT NULL DEFAULT '',
  batch TEXT NOT NULL DEFAULT '',
  opened_on TEXT NOT NULL DEFAULT '',
  best_before TEXT NOT NULL DEFAULT '',
  kept_from TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX on_hand_by_project ON on_hand (project_id, position);

CREATE TABLE measurement (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  product_id TEXT NOT NULL,
  thickness_mm REAL NOT NULL
) STRICT;
CREATE INDEX measurement_by_project ON measurement (project_id, position);

CREATE TABLE named_size (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  name TEXT NOT NULL,
  value TEXT NOT NULL,
  value_mm REAL,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX named_size_by_project ON named_size (project_id, position);

CREATE TABLE edit (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  revision INTEGER NOT NULL,
  label TEXT NOT NULL,
  rows TEXT NOT NULL,
  at TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('done', 'undone', 'dropped'))
) STRICT;
CREATE INDEX edit_by_state ON edit (project_id, state, id);

CREATE TABLE cut_piece (
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  layout TEXT NOT NULL,
  sheet INTEGER NOT NULL,
  piece INTEGER NOT NULL,
  at TEXT NOT NULL,
  PRIMARY KEY (project_id, layout, sheet, piece)
) STRICT, WITHOUT ROWID;

CREATE TABLE begun_layout (
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  layout TEXT NOT NULL,
  material_id TEXT NOT NULL,
  content TEXT NOT NULL,
  PRIMARY KEY (project_id, layout)
) STRICT, WITHOUT ROWID;

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

CREATE TABLE shop_hours (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  weekday INTEGER NOT NULL,
  from_time TEXT NOT NULL,
  to_time TEXT NOT NULL
) STRICT;
CREATE INDEX shop_hours_by_project ON shop_hours (project_id, position);

CREATE TABLE day_off (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  date TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX day_off_by_project ON day_off (project_id, position);

CREATE TABLE climate_row (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  date TEXT NOT NULL,
  time TEXT NOT NULL,
  temperature_c REAL,
  humidity_percent REAL
) STRICT;
CREATE INDEX climate_row_by_project ON climate_row (project_id, position);

CREATE TABLE pinned_task (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  task_id TEXT NOT NULL,
  start TEXT NOT NULL
) STRICT;
CREATE INDEX pinned_task_by_project ON pinned_task (project_id, position);

CREATE TABLE done_task (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  task_id TEXT NOT NULL,
  start TEXT NOT NULL,
  end_time TEXT NOT NULL,
  litres REAL
) STRICT;
CREATE INDEX done_task_by_project ON done_task (project_id, position);

CREATE TABLE arrival (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES project (id) ON DELETE CASCADE,
  position REAL NOT NULL,
  product_id TEXT NOT NULL,
  date TEXT NOT NULL
) STRICT;
CREATE INDEX arrival_by_project ON arrival (project_id, position);

CREATE TABLE calendar_answer (
  project_id INTEGER NOT NULL PRIMARY KEY REFERENCES project (id) ON DELETE CASCADE,
  planned_from TEXT NOT NULL,
  feed_token TEXT NOT NULL,
  question TEXT NOT NULL,
  answer TEXT,
  events TEXT NOT NULL,
  check_text TEXT NOT NULL,
  at TEXT NOT NULL
) STRICT;

CREATE TABLE shipped_product (
  product_id TEXT NOT NULL PRIMARY KEY,
  content TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE deleted_project (
  project_id INTEGER NOT NULL PRIMARY KEY REFERENCES project (id) ON DELETE CASCADE,
  deleted_at TEXT NOT NULL
) STRICT;

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
  note TEXT NOT NULL,
  sender TEXT NOT NULL DEFAULT '',
  shown TEXT NOT NULL DEFAULT 'price'
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

INSERT INTO catalogue_state (id, revision) VALUES (1, 1);
`;

/** Marks the file as ours in its header ("PLYW"). */
export const APPLICATION_ID = 0x504c5957;
