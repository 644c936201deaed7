import type { ChildProcessWithoutNullStreams } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { dirname, join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { backUp, listBackups } from '../../db/backup.ts';
import { readCatalogueRows } from '../../db/catalogue.repository.ts';
import { openDatabase } from '../../db/open.ts';
import { listProjects } from '../../db/projects.repository.ts';
import { readProject } from '../../db/read-project.ts';
import { undoEdit } from '../../db/undo.ts';
import type { ChangeAnswer, ProjectState } from '../../server/http/contract.ts';
import { startSettings } from '../../server/start-settings.ts';
import { freshFile } from '../db/fresh-file.ts';
import { newerProgram } from '../db/newer-program.ts';
import { addressOf, runProgram } from './run-program.ts';

async function ended(child: ChildProcessWithoutNullStreams) {
  let out = '';
  let err = '';
  child.stdout.on('data', (chunk: Buffer) => {
    out += chunk.toString();
  });
  child.stderr.on('data', (chunk: Buffer) => {
    err += chunk.toString();
  });
  const [code] = (await once(child, 'close')) as [number | null];
  return { code, out, err };
}

describe('starting', () => {
  it('says in one line where it is, makes the database with catalogue, demos and a backup, and stops properly', async () => {
    const path = join(dirname(freshFile()), 'data', 'plywright.db');
    const child = runProgram('main', { PLYWRIGHT_DB: path });
    const end = ended(child);
    const url = await addressOf(child);
    expect((await fetch(`${url}/api/health`)).status).toBe(200);
    const events = await fetch(`${url}/api/projects/1/events`);
    expect(events.status).toBe(200);
    child.kill('SIGTERM');
    const { code, out, err } = await end;
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(
      /^Plywright is at http:\/\/127\.0\.0\.1:\d+ with the projects in \S+plywright\.db\. Ctrl\+C stops it\.\n$/,
    );
    expect(listBackups(path)).toHaveLength(1);
    const db = openDatabase(path);
    expect(listProjects(db).length).toBeGreaterThanOrEqual(2);
    expect(readCatalogueRows(db).products.length).toBeGreaterThan(20);
    db.close();
  });

  it.each([
    [
      'a port in use',
      async (path: string) => {
        const server = createServer().listen(0, '127.0.0.1');
        await once(server, 'listening');
        onTestFinished(() => {
          server.close();
        });
        return { PLYWRIGHT_DB: path, PORT: String((server.address() as AddressInfo).port) };
      },
      /Port \d+ is in use/,
    ],
    [
      'a port that is none',
      (path: string) => ({ PLYWRIGHT_DB: path, PORT: '4860a' }),
      /PORT=4860a is not a port/,
    ],
    [
      'a newer database',
      (path: string) => {
        openDatabase(path, newerProgram).close();
        return { PLYWRIGHT_DB: path };
      },
      /written by a newer Plywright/,
    ],
    [
      'a damaged database',
      (path: string) => {
        writeFileSync(path, 'x'.repeat(5000));
        return { PLYWRIGHT_DB: path };
      },
      /damaged, or not a database/,
    ],
    [
      'a folder that cannot be made',
      (path: string) => {
        writeFileSync(path, '');
        return { PLYWRIGHT_DB: join(path, 'plywright.db') };
      },
      /cannot be opened for writing/,
    ],
    [
      'an open network without a passphrase',
      (path: string) => ({ PLYWRIGHT_DB: path, HOST: '0.0.0.0' }),
      /Set PLYWRIGHT_PASSPHRASE/,
    ],
  ])('is refused in plain words for %s', async (_what, prepare, words) => {
    const { code, out, err } = await ended(runProgram('main', await prepare(freshFile())));
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(words);
    expect(err).not.toMatch(/\bat .*:\d+:\d+/);
    expect(err.trim().split('\n')).toHaveLength(2);
  });
});

describe('the settings of the environment', () => {
  it('keep the program to this machine unless told otherwise', () => {
    expect(startSettings({})).toMatchObject({
      host: '127.0.0.1',
      port: 4860,
      passphrase: null,
      allowedHosts: [],
      logLevel: 'warn',
      cutting: { searchMs: 10_000 },
    });
    expect(startSettings({}).databasePath).toMatch(/data[/\\]plywright\.db$/);
    for (const host of ['127.0.0.1', '::1', 'localhost'])
      expect(startSettings({ HOST: host }).host).toBe(host);
  });

  it('open it to the network only with a passphrase worth the name', () => {
    for (const host of ['0.0.0.0', '::', '192.168.1.20', 'shop-pc', '127.0.0.1.example'])
      expect(() => startSettings({ HOST: host })).toThrow('open the projects');
    expect(() => startSettings({ HOST: '0.0.0.0', PLYWRIGHT_PASSPHRASE: 'short' })).toThrow('shorter than');
    const open = startSettings({
      HOST: '0.0.0.0',
      PLYWRIGHT_PASSPHRASE: 'four grey planes',
      PLYWRIGHT_HOSTS: 'shop.lan, bench.lan',
    });
    expect(open.allowedHosts).toEqual(
      expect.arrayContaining(['shop.lan', 'bench.lan', '0.0.0.0', '127.0.0.1']),
    );
  });

  it('refuse what is no port and no log level', () => {
    for (const port of ['-1', '65536', '80.5', ' 80', 'http'])
      expect(() => startSettings({ PORT: port })).toThrow('not a port');
    expect(() => startSettings({ PLYWRIGHT_LOG: 'loud' })).toThrow('not a level');
    for (const seconds of ['-1', '3601', 'ten', '1e3', ' 5'])
      expect(() => startSettings({ PLYWRIGHT_CUTTING_SECONDS: seconds })).toThrow('not a time');
    expect(startSettings({ PLYWRIGHT_CUTTING_SECONDS: '0' }).cutting.searchMs).toBe(0);
    expect(startSettings({ PLYWRIGHT_CUTTING_SECONDS: '2.5' }).cutting.searchMs).toBe(2500);
  });
});

describe('a server killed in the middle of edits', () => {
  it('has every acknowledged edit, and undo goes on after the restart', async () => {
    const path = freshFile();
    const child = runProgram('main', { PLYWRIGHT_DB: path });
    const url = await addressOf(child);
    const read = (await (await fetch(`${url}/api/projects/1`)).json()) as ProjectState;
    const part = read.rows.parts[0]?.id ?? '';
    let acknowledged = read.revision;
    try {
      for (;;) {
        // From the twelfth edit on, the kill comes some time into a request.
        if (acknowledged === read.revision + 12) setTimeout(() => child.kill('SIGKILL'), 3);
        const answer = await fetch(`${url}/api/projects/1/parts/${part}`, {
          method: 'PATCH',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify({ revision: acknowledged, note: `edit ${acknowledged + 1}` }),
        });
        acknowledged = ((await answer.json()) as ChangeAnswer).revision;
      }
    } catch {
      // The connection breaks when the server is killed.
    }
    expect(acknowledged).toBeGreaterThanOrEqual(read.revision + 12);

    const db = openDatabase(path);
    const after = readProject(db, 1);
    expect([acknowledged, acknowledged + 1]).toContain(after.revision);
    expect(after.rows.parts[0]?.note).toBe(`edit ${after.revision}`);
    for (let revision = after.revision; revision < 2 * after.revision - read.revision; revision++)
      undoEdit(db, 1, revision, new Date());
    expect(readProject(db, 1).rows).toEqual(read.rows);
    db.close();
  });
});

describe('the restore command', () => {
  it('lists the backups, puts one back, and says where the state before is', async () => {
    const path = freshFile();
    const db = openDatabase(path);
    const backup = backUp(db, 'daily', new Date());
    db.exec('UPDATE catalogue_state SET revision = 99');
    db.close();
    const list = await ended(runProgram('restore', { PLYWRIGHT_DB: path }));
    expect(list.out).toContain(backup);
    const restored = await ended(runProgram('restore', { PLYWRIGHT_DB: path }, backup));
    expect(restored.code).toBe(0);
    expect(restored.out).toContain('before-restore');
    expect(readFileSync(path).equals(readFileSync(backup))).toBe(true);
  });

  it('is refused in plain words', async () => {
    const path = freshFile();
    mkdirSync(dirname(path), { recursive: true });
    const { code, err } = await ended(runProgram('restore', { PLYWRIGHT_DB: path }, 'nowhere.db'));
    expect(code).toBe(1);
    expect(err).toMatch(/there is no such file/);
    expect(err.trim().split('\n')).toHaveLength(2);
  });
});
