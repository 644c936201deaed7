import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { describe, expect, it } from 'vitest';
import { BACKUPS_KEPT, backUp, listBackups } from '../../db/backup.ts';
import { openDatabase } from '../../db/open.ts';
import { restoreBackup } from '../../db/restore-backup.ts';
import { freshFile } from './fresh-file.ts';
import { newerProgram } from './newer-program.ts';
import { type OpenProject, openProject, projectIn } from './open-project.ts';
import { problemOf } from './problem-of.ts';

/** The n-th day of a made-up month. */
const day = (n: number): Date => new Date(Date.UTC(2026, 2, n, 8));

function edit(project: OpenProject, kerfMm: number): void {
  project.change({ op: 'settings', values: { kerfMm } });
}

describe('a backup', () => {
  it('holds everything, the edit log included', () => {
    const project = openProject();
    const before = project.dump();
    edit(project, 2.2);
    const path = backUp(project.db, 'daily', day(1));
    const copy = projectIn(openDatabase(path), path, project.id);
    expect(copy.dump()).toEqual(project.dump());
    copy.undo();
    expect(copy.dump()).toEqual(before);
    copy.db.close();
  });

  it('is made while the database is open, and again only when something has changed', () => {
    const project = openProject();
    const first = backUp(project.db, 'daily', day(1));
    expect(backUp(project.db, 'daily', day(2))).toBe(first);
    edit(project, 2.2);
    expect(backUp(project.db, 'daily', day(3))).not.toBe(first);
    expect(listBackups(project.path)).toHaveLength(2);
  });

  it('lets go of the oldest of its occasion, and leaves nothing half written', () => {
    const project = openProject();
    const deletion = backUp(project.db, 'before-delete', day(1));
    const made = Array.from({ length: BACKUPS_KEPT + 3 }, (_, index) => {
      edit(project, 1 + index / 10);
      return backUp(project.db, 'daily', day(2 + index));
    });
    expect(listBackups(project.path)).toEqual([...made.slice(3).reverse(), deletion]);
    expect(readdirSync(dirname(deletion)).filter((name) => name.endsWith('.partial'))).toEqual([]);
  });
});

describe('restoring', () => {
  it('brings back the state of the backup and saves the state it replaces', () => {
    const project = openProject();
    const wanted = project.dump();
    const backup = backUp(project.db, 'daily', day(1));
    edit(project, 9);
    const replaced = project.dump();
    project.db.close();

    const saved = restoreBackup(backup, project.path, day(2)) ?? '';
    const restored = projectIn(openDatabase(project.path), project.path, project.id);
    expect(restored.dump()).toEqual(wanted);
    restored.db.close();
    const old = projectIn(openDatabase(saved), saved, project.id);
    expect(old.dump()).toEqual(replaced);
    old.db.close();
  });

  it('works from the oldest backup of its own kind, which the saving would let go of', () => {
    const project = openProject();
    const wanted = project.dump();
    const oldest = backUp(project.db, 'before-restore', day(1));
    for (let n = 2; n <= BACKUPS_KEPT; n++) {
      edit(project, n);
      backUp(project.db, 'before-restore', day(n));
    }
    edit(project, 20);
    project.db.close();
    restoreBackup(oldest, project.path, day(20));
    const restored = projectIn(openDatabase(project.path), project.path, project.id);
    expect(restored.dump()).toEqual(wanted);
    restored.db.close();
  });

  it('makes the database where there is none, and moves a damaged one out of the way', () => {
    const project = openProject();
    const backup = backUp(project.db, 'daily', day(1));
    const elsewhere = freshFile();
    expect(restoreBackup(backup, elsewhere, day(2))).toBe(null);
    const damage = Buffer.alloc(5000, 'x');
    writeFileSync(elsewhere, damage);
    const aside = restoreBackup(backup, elsewhere, day(3)) ?? '';
    expect(readFileSync(aside).equals(damage)).toBe(true);
    const restored = projectIn(openDatabase(elsewhere), elsewhere, project.id);
    expect(restored.dump()).toEqual(project.dump());
    restored.db.close();
  });

  it('is refused while the program runs, changing nothing', () => {
    const project = openProject();
    const backup = backUp(project.db, 'daily', day(1));
    edit(project, 9);
    const now = project.dump();
    expect(problemOf(() => restoreBackup(backup, project.path, day(2))).message).toContain('open in another');
    expect(project.dump()).toEqual(now);
    edit(project, 10);
    expect(project.revision()).toBe(3);
  });

  it('is refused from a file that is missing, of another kind, damaged or newer, changing nothing', () => {
    const project = openProject();
    project.db.close();
    const before = readFileSync(project.path);
    const missing = freshFile();
    const text = freshFile();
    writeFileSync(text, 'not a database at all '.repeat(400));
    const newer = freshFile();
    openDatabase(newer, newerProgram).close();
    const empty = freshFile();
    writeFileSync(empty, '');
    const damaged = freshFile();
    const bytes = Buffer.from(before);
    bytes.fill(0xff, 8192, 16384);
    writeFileSync(damaged, bytes);
    for (const file of [missing, text, newer, empty, damaged]) {
      expect(problemOf(() => restoreBackup(file, project.path, day(1))).wayOut).toContain(
        'Nothing was changed',
      );
    }
    expect(readFileSync(project.path).equals(before)).toBe(true);
    expect(existsSync(missing)).toBe(false);
  });
});
