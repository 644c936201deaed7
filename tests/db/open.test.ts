import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openDatabase } from '../../db/open.ts';
import { freshFile } from './fresh-file.ts';
import { newerProgram } from './newer-program.ts';
import { problemOf } from './problem-of.ts';

describe('opening a file', () => {
  it('refuses one written by a newer program, and says so', () => {
    const path = freshFile();
    openDatabase(path, newerProgram).close();
    const before = readFileSync(path);
    const problem = problemOf(() => openDatabase(path));
    expect(problem.message).toContain('newer Plywright');
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  it('refuses a database of another program', () => {
    const path = freshFile();
    const other = new Sqlite(path);
    other.exec('CREATE TABLE recipe (id INTEGER PRIMARY KEY)');
    other.close();
    expect(problemOf(() => openDatabase(path)).message).toContain('another program');
  });

  it('refuses a file that is not a database, and a folder it may not write in', () => {
    const path = freshFile();
    writeFileSync(path, 'shopping list\n'.repeat(100));
    expect(problemOf(() => openDatabase(path)).message).toContain('not a database');
    const inTheWay = freshFile();
    writeFileSync(inTheWay, '');
    expect(problemOf(() => openDatabase(join(inTheWay, 'plywright.db'))).message).toContain(
      'cannot be opened',
    );
    const folder = freshFile();
    mkdirSync(folder);
    expect(problemOf(() => openDatabase(folder)).message).toContain('cannot be opened');
  });

  it('stops at tables altered by hand', () => {
    const path = freshFile();
    const db = openDatabase(path);
    db.exec('ALTER TABLE part RENAME COLUMN note TO remark');
    db.close();
    expect(problemOf(() => openDatabase(path)).message).toContain('not laid out');
  });

  it('writes ahead, waits for the disk and holds foreign keys', () => {
    const path = freshFile();
    const db = openDatabase(path);
    expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
    // 2 is FULL in SQLite's numbering of the pragma.
    expect(db.pragma('synchronous', { simple: true })).toBe(2);
    expect(db.pragma('foreign_keys', { simple: true })).toBe(1);
    expect(db.pragma('busy_timeout', { simple: true })).toBeGreaterThan(0);
    db.close();
  });

  it('creates the folder, opens again unchanged, and takes any file name', () => {
    const path = join(dirname(freshFile()), "it's a shop", 'ply wright.db');
    openDatabase(path).close();
    const db = openDatabase(path, newerProgram);
    db.close();
    expect(readdirSync(dirname(path)).filter((name) => name.startsWith(basename(path)))).toHaveLength(2);
  });
});
