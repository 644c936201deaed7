import type { Migration } from '../migrate.ts';

/** What the coat calendar is planned from. Older projects get working hours to begin with. Frozen. */
export const calendar: Migration = {
  name: '004-calendar',
  up(db) {
    db.exec(`
ALTER TABLE project ADD COLUMN start_date TEXT NOT NULL DEFAULT '';
ALTER TABLE project ADD COLUMN time_zone TEXT NOT NULL DEFAULT 'UTC';
ALTER TABLE project ADD COLUMN hands INTEGER NOT NULL DEFAULT 1;
ALTER TABLE project ADD COLUMN rack_m2 REAL;
ALTER TABLE project ADD COLUMN largest_batch_m2 REAL;
ALTER TABLE project ADD COLUMN sands_apart INTEGER NOT NULL DEFAULT 0 CHECK (sands_apart IN (0, 1));
ALTER TABLE project ADD COLUMN wood_warmer_c REAL NOT NULL DEFAULT 0;
ALTER TABLE project ADD COLUMN drying_doubles_per_c REAL NOT NULL DEFAULT 10;
ALTER TABLE project ADD COLUMN drying_uses_humidity INTEGER NOT NULL DEFAULT 1 CHECK (drying_uses_humidity IN (0, 1));
ALTER TABLE project ADD COLUMN climate_kind TEXT NOT NULL DEFAULT 'day-night' CHECK (climate_kind IN ('constant', 'day-night', 'hourly'));
ALTER TABLE project ADD COLUMN day_c REAL NOT NULL DEFAULT 20;
ALTER TABLE project ADD COLUMN night_c REAL NOT NULL DEFAULT 15;
ALTER TABLE project ADD COLUMN day_humidity REAL NOT NULL DEFAULT 50;
ALTER TABLE project ADD COLUMN night_humidity REAL NOT NULL DEFAULT 65;
ALTER TABLE project ADD COLUMN keep_under_health_limit INTEGER NOT NULL DEFAULT 0 CHECK (keep_under_health_limit IN (0, 1));

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
`);
    const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
    db.prepare(`UPDATE project SET time_zone = ?`).run(zone);
    const hours = db.prepare(
      `INSERT INTO shop_hours (project_id, position, weekday, from_time, to_time) SELECT id, ?, ?, ?, ? FROM project`,
    );
    for (let weekday = 0; weekday < 7; weekday++) {
      const [from, to] = weekday < 5 ? ['18:00', '21:00'] : ['09:00', '17:00'];
      hours.run(weekday + 1, weekday, from, to);
    }
  },
};
