import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

/** The documents are tested: what they name exists, and what exists in planning is documented. */

const root = resolve(dirname(fileURLToPath(import.meta.url)), '..');
const read = (path: string): string => readFileSync(join(root, path), 'utf8');
const scripts = Object.keys(
  (JSON.parse(read('package.json')) as { scripts: Record<string, string> }).scripts,
);
const documents = ['README.md', 'DEVELOPERS.md'];

function planningFiles(folder: string): string[] {
  return readdirSync(join(root, folder)).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(join(root, path)).isDirectory()) return planningFiles(path);
    return name.endsWith('.ts') && !name.endsWith('.d.ts') ? [relative('.', path)] : [];
  });
}

describe('the documents', () => {
  it('name every npm script, and no script that is gone', () => {
    const text = documents.map(read).join('\n');
    const named = [...text.matchAll(/npm (?:run (?:--silent )?)?([a-z][\w:-]*)/g)].map(
      (match) => match[1] ?? '',
    );
    const builtIn = new Set(['ci', 'run', 'packages', 'registry', 'install']);
    expect(named.filter((name) => !scripts.includes(name) && !builtIn.has(name))).toEqual([]);
    expect(scripts.filter((name) => !named.includes(name))).toEqual([]);
  });

  it('name only files and folders that exist', () => {
    const paths = documents.flatMap((document) =>
      [...read(document).matchAll(/`((?:server|client|db|tests)\/[\w./-]*)`/g)].map(
        (match) => match[1] ?? '',
      ),
    );
    expect(paths.length).toBeGreaterThan(5);
    expect(
      paths.filter((path) => statSync(join(root, path), { throwIfNoEntry: false }) === undefined),
    ).toEqual([]);
  });

  it('are opened by a docblock on every exported planning function', () => {
    const bare = planningFiles('server/planning').flatMap((file) => {
      const text = read(file);
      return [...text.matchAll(/^export function (\w+)/gm)]
        .filter((match) => !/\*\/\s*$/.test(text.slice(0, match.index)))
        .map((match) => `${file}: ${match[1]}`);
    });
    expect(bare).toEqual([]);
  });

  it('give each primary formula a source, or say that it is a rule of ours or common practice', () => {
    const formulaFolders = ['finish', 'air', 'climate'];
    const unsourced = planningFiles('server/planning')
      .filter((file) => formulaFolders.some((folder) => file.includes(`/planning/${folder}/`)))
      .filter((file) => /^export function (?!plan)/m.test(read(file)))
      .filter((file) => !/source|common practice|definition|exact/i.test(read(file)));
    expect(unsourced).toEqual([]);
  });
});
