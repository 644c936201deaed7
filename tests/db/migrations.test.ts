import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import type { Migration } from '../../db/migrate.ts';
import { ALL_MIGRATIONS } from '../../db/migrations/all-migrations.ts';
import { openDatabase } from '../../db/open.ts';
import { APPLICATION_ID, SCHEMA_SQL } from '../../db/schema.ts';
import { schemaText } from '../../db/schema-text.repository.ts';
import { freshFile } from './fresh-file.ts';
import { addsColumn, newerProgram } from './newer-program.ts';
import { problemOf } from './problem-of.ts';

const snapshot = readFileSync(new URL('../../db/schema.snapshot.sql', import.meta.url), 'utf8');
const migrationFiles = readdirSync(new URL('../../db/migrations/', import.meta.url)).filter((name) =>
  /^\d/.test(name),
);

describe('the layout of the database', () => {
  it('is the committed snapshot when created', () => {
    const db = openDatabase(freshFile());
    expect(schemaText(db)).toBe(snapshot);
    db.close();
  });

  it('is the committed snapshot when led through every migration', () => {
    const db = new Sqlite(':memory:');
    for (const migration of ALL_MIGRATIONS) migration.up(db);
    expect(schemaText(db)).toBe(snapshot);
  });

  it('has its migrations numbered without gaps and in order', () => {
    expect(ALL_MIGRATIONS.map((migration) => `${migration.name}.ts`)).toEqual(migrationFiles.toSorted());
    migrationFiles.forEach((name, index) => {
      expect(Number(name.slice(0, 3))).toBe(index + 1);
    });
  });

  it('stores the number of steps in user_version and marks the file as ours', () => {
    const db = openDatabase(freshFile());
    expect(db.pragma('user_version', { simple: true })).toBe(ALL_MIGRATIONS.length);
    expect(db.pragma('application_id', { simple: true })).toBe(APPLICATION_ID);
    db.close();
  });
});

describe('migrating an older file', () => {
  it('adds what is new, keeps the rows, and leaves a copy of the old file beside it', () => {
    const path = freshFile();
    const older = openDatabase(path);
    older.exec(`UPDATE catalogue_state SET revision = 41`);
    older.close();

    const db = openDatabase(path, newerProgram);
    expect(db.pragma('user_version', { simple: true })).toBe(ALL_MIGRATIONS.length + 1);
    expect(db.prepare('SELECT revision FROM catalogue_state').pluck().get()).toBe(41);
    db.close();

    const copies = readdirSync(dirname(path)).filter((name) => name.endsWith('.bak'));
    expect(copies).toHaveLength(1);
    const copy = openDatabase(join(dirname(path), copies[0] ?? ''));
    expect(schemaText(copy)).toBe(snapshot);
    expect(copy.prepare('SELECT revision FROM catalogue_state').pluck().get()).toBe(41);
    copy.close();
  });

  it('leaves the old file byte for byte as it was when a step fails', () => {
    const path = freshFile();
    openDatabase(path).close();
    const before = readFileSync(path);
    const failing: Migration = {
      name: '999-breaks',
      up: (db) => {
        db.exec('DROP TABLE edit; CREATE TABLE half_done (id INTEGER PRIMARY KEY) STRICT');
        throw new Error('the disk said no');
      },
    };
    const problem = problemOf(() => openDatabase(path, { migrations: [...ALL_MIGRATIONS, failing] }));
    expect(problem.message).toContain('999-breaks');
    expect(problem.message).toContain('the disk said no');
    expect(problem.wayOut).toContain('copy');
    expect(readFileSync(path).equals(before)).toBe(true);
    const db = openDatabase(path);
    expect(schemaText(db)).toBe(snapshot);
    db.close();
  });

  it('takes everything back when the result is not the expected layout, or rows have lost what they point at', () => {
    const path = freshFile();
    openDatabase(path).close();
    const drifting = { migrations: [...ALL_MIGRATIONS, addsColumn], schemaSql: SCHEMA_SQL };
    expect(problemOf(() => openDatabase(path, drifting)).message).toContain('not laid out');
    const orphaning: Migration = {
      name: '999-orphans',
      up: (db) =>
        db.exec(`INSERT INTO recipe (project_id, position, name, faces) VALUES (77, 1, 'x', 'flip')`),
    };
    const orphaned = problemOf(() => openDatabase(path, { migrations: [...ALL_MIGRATIONS, orphaning] }));
    expect(orphaned.message).toContain('point at rows that do not exist');
    const db = openDatabase(path);
    expect(db.pragma('user_version', { simple: true })).toBe(ALL_MIGRATIONS.length);
    db.close();
  });
});
