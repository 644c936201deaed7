import type { Migration } from '../migrate.ts';

/** The room in which coats are laid, and what evaporates from products. Frozen. */
export const air: Migration = {
  name: '005-air',
  up: (db) =>
    db.exec(`
ALTER TABLE project ADD COLUMN room_length_m REAL;
ALTER TABLE project ADD COLUMN room_width_m REAL;
ALTER TABLE project ADD COLUMN room_height_m REAL;
ALTER TABLE project ADD COLUMN air_kind TEXT NOT NULL DEFAULT 'fan' CHECK (air_kind IN ('fan', 'air-changes', 'opening'));
ALTER TABLE project ADD COLUMN fan_m3_per_hour REAL;
ALTER TABLE project ADD COLUMN fan_derating REAL NOT NULL DEFAULT 0.5;
ALTER TABLE project ADD COLUMN air_changes_per_hour REAL;
ALTER TABLE project ADD COLUMN opening_m2 REAL;
ALTER TABLE project ADD COLUMN wind_m_per_s REAL NOT NULL DEFAULT 1;
ALTER TABLE project ADD COLUMN mixing_factor REAL NOT NULL DEFAULT 3;
ALTER TABLE project ADD COLUMN outdoor_c REAL;
ALTER TABLE project ADD COLUMN heat_price_per_kwh_minor REAL;
ALTER TABLE project ADD COLUMN health_basis TEXT NOT NULL DEFAULT 'peak' CHECK (health_basis IN ('peak', 'averages'));
ALTER TABLE product ADD COLUMN solvents_basis TEXT;
ALTER TABLE product ADD COLUMN solvents_source TEXT;
ALTER TABLE product ADD COLUMN solvents_read_on TEXT;
ALTER TABLE product ADD COLUMN solvents_note TEXT;
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
`),
};
