import { readdirSync, readFileSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import { addShipped } from '../db/add-shipped.ts';
import { addShippedSolvents } from '../db/add-shipped-solvents.ts';
import { forgetAttachmentFiles } from '../db/attachment-files.ts';
import { readCatalogue } from '../db/catalogue/read-catalogue.ts';
import { readCatalogueRows } from '../db/catalogue.repository.ts';
import { correctShipped } from '../db/correct-shipped.ts';
import { createProject } from '../db/create-project.ts';
import { forgetDeletedProjects } from '../db/delete-project.ts';
import { dateInZone } from './calendar-search/zone-days.ts';
import { readProjectDocument } from './exchange/project-document.ts';
import { readLengthCell } from './http/read-length-cell.ts';
import { shiftDates } from './shift-dates.ts';

/** The day that the dates in the demos are written for, a Wednesday. */
const DEMO_DAY = '2026-03-11';
const DEMO_FOLDER = new URL('../db/demo/', import.meta.url);

/**
 * Brings the shipped catalogue into an open database, its corrections into an older one, and into a new one the demo
 * projects; removes projects that were deleted long ago, and the files that were attached to them.
 */
export function prepareDatabase(db: Database, now: Date): void {
  db.transaction(() => {
    const isNew = readCatalogueRows(db).products.length === 0;
    const shipped = readCatalogue();
    addShipped(db, shipped);
    addShippedSolvents(db, shipped);
    correctShipped(db, shipped);
    if (isNew) addDemos(db, now);
    forgetDeletedProjects(db, now);
  }).immediate();
  forgetAttachmentFiles(db);
}

function addDemos(db: Database, now: Date): void {
  const catalogue = readCatalogueRows(db);
  const files = readdirSync(DEMO_FOLDER).filter((file) => file.endsWith('.json'));
  for (const file of files.toSorted()) {
    const read = readProjectDocument(JSON.parse(readFileSync(new URL(file, DEMO_FOLDER), 'utf8')), catalogue);
    if (!read.ok)
      throw new Error(
        `db/demo/${file} is unreadable: ${read.problems.map(({ message }) => message).join(' ')}`,
      );
    const today = dateInZone(now, read.input.settings.timeZone);
    createProject(db, shiftDates(read.input, DEMO_DAY, today), { readLengthCell, now });
  }
}
