import type { Database } from 'better-sqlite3';
import type { ProjectSettings } from '../server/planning/project-input.ts';
import type { ProjectSummary } from './project-rows.ts';
import { columnName } from './row-layouts.ts';
import type { StoredRow } from './rows.repository.ts';
import { prepared } from './statements.ts';

/** Projects and their settings. */

type SettingName = keyof ProjectSettings;

/** Every setting, with the words an undo menu uses for it. */
export const SETTING_WORDS: Readonly<Record<SettingName, string>> = {
  name: 'project name',
  units: 'units',
  inchStyle: 'way of printing inches',
  inchDenominator: 'finest fraction',
  currency: 'currency',
  taxPercent: 'tax',
  coverageChoice: 'coverage choice',
  overhangMm: 'banding overhang',
  trimAllowanceMm: 'banding trim allowance',
  spareStrips: 'spare strips',
  bandingOrder: 'banding order',
  kerfMm: 'kerf',
  sheetTrimMm: 'sheet trim',
  cutStages: 'cut stages',
  finishLoss: 'finish loss',
  startDate: 'first day of finishing',
  timeZone: 'time zone',
  hands: 'people at work',
  rackM2: 'room on the rack',
  largestBatchM2: 'largest batch',
  sandsApart: 'sanding apart',
  woodWarmerC: 'warmth of the wood',
  dryingDoublesPerC: 'drying by temperature',
  dryingUsesHumidity: 'drying by humidity',
  climateKind: 'kind of shop climate',
  dayC: 'day temperature',
  nightC: 'night temperature',
  dayHumidity: 'day humidity',
  nightHumidity: 'night humidity',
  keepUnderHealthLimit: 'batches under the health limit',
  roomLengthM: 'length of the room',
  roomWidthM: 'width of the room',
  roomHeightM: 'height of the room',
  airKind: 'source of fresh air',
  fanM3PerHour: 'rating of the fan',
  fanDerating: 'share of the rating that arrives',
  airChangesPerHour: 'air changes',
  openingM2: 'opening',
  windMPerS: 'wind at the opening',
  mixingFactor: 'mixing factor',
  outdoorC: 'outdoor temperature',
  heatPricePerKwhMinor: 'price of heat',
  healthBasis: 'basis of the health limits',
  contingencyPercent: 'contingency',
  rateMinorPerHour: 'hourly rate',
  readyMadeMinor: 'ready-made price',
};

const settingNames = Object.keys(SETTING_WORDS) as SettingName[];
const settingColumns = settingNames.map(columnName);
const settings = settingNames.map((name) => `${columnName(name)} AS ${name}`).join(', ');

/** Not among the deleted ones. */
const kept = `id NOT IN (SELECT project_id FROM deleted_project)`;

const sql = {
  list: `SELECT CAST(id AS TEXT) AS id, name, units, currency, revision, updated_at AS updatedAt FROM project WHERE ${kept} ORDER BY project.id`,
  revision: `SELECT revision FROM project WHERE id = ? AND ${kept}`,
  settings: `SELECT ${settings} FROM project WHERE id = ? AND ${kept}`,
  stored: `SELECT id, ${settingColumns.join(', ')} FROM project WHERE id = ? AND ${kept}`,
  insert: `INSERT INTO project (revision, created_at, updated_at, ${settingColumns.join(', ')}) VALUES (1, @at, @at, ${settingColumns.map((column) => `@${column}`).join(', ')})`,
  update: `UPDATE project SET ${settingColumns.map((column) => `${column} = @${column}`).join(', ')} WHERE id = @id`,
  setRevision: `UPDATE project SET revision = ?, updated_at = ? WHERE id = ?`,
};

/** Settings that are yes or no: 1 or 0 in the database. */
const YES_NO_SETTINGS = [
  'sandsApart',
  'dryingUsesHumidity',
  'keepUnderHealthLimit',
] as const satisfies readonly SettingName[];
type YesNoSetting = (typeof YES_NO_SETTINGS)[number];

interface SettingsRow
  extends Omit<ProjectSettings, 'bandingOrder' | YesNoSetting>,
    Readonly<Record<YesNoSetting, number>> {
  readonly bandingOrder: string;
}

export function listProjects(db: Database): ProjectSummary[] {
  return prepared(db, sql.list).all() as ProjectSummary[];
}

/** The revision of a project; undefined when there is no such project. */
export function readRevision(db: Database, projectId: number): number | undefined {
  return prepared(db, sql.revision).pluck().get(projectId) as number | undefined;
}

export function writeRevision(db: Database, projectId: number, revision: number, at: string): void {
  prepared(db, sql.setRevision).run(revision, at, projectId);
}

export function readSettings(db: Database, projectId: number): ProjectSettings | undefined {
  const row = prepared(db, sql.settings).get(projectId) as SettingsRow | undefined;
  if (row === undefined) return undefined;
  const yesNo = Object.fromEntries(YES_NO_SETTINGS.map((name) => [name, row[name] === 1])) as Readonly<
    Record<YesNoSetting, boolean>
  >;
  const bandingOrder = row.bandingOrder.split(',') as ProjectSettings['bandingOrder'] & string[];
  return { ...row, ...yesNo, bandingOrder };
}

/** The settings as columns, for the edit log. */
export function readStoredSettings(db: Database, projectId: number): StoredRow | undefined {
  return prepared(db, sql.stored).get(projectId) as StoredRow | undefined;
}

export function updateStoredSettings(db: Database, row: StoredRow): void {
  prepared(db, sql.update).run(row);
}

/** Settings as columns; only the ones given. */
export function settingsColumns(values: Partial<ProjectSettings>): StoredRow {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => [columnName(name), settingColumn(value)]),
  );
}

function settingColumn(value: ProjectSettings[SettingName]): string | number | null {
  if (typeof value === 'boolean') return value ? 1 : 0;
  return typeof value === 'object' && value !== null ? value.join(',') : value;
}

export function insertProject(db: Database, values: ProjectSettings, at: string): number {
  return Number(prepared(db, sql.insert).run({ ...settingsColumns(values), at }).lastInsertRowid);
}
