import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

/** Holds the directions in which the folders may import, so that a mistake is named by the rule it breaks. */

const root = resolve(dirname(fileURLToPath(import.meta.url)), '..');

interface ImportLine {
  readonly from: string;
  readonly to: string;
  readonly typeOnly: boolean;
}

function sourceFiles(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (name === 'node_modules' || name === 'dist' || name.startsWith('.')) return [];
    if (statSync(path).isDirectory()) return sourceFiles(path);
    return /\.(ts|mts|mjs|js)$/.test(name) ? [path] : [];
  });
}

/** Imports of one file; relative ones resolved to a path from the project root, packages as they stand. */
function importsOf(file: string, text: string): ImportLine[] {
  const pattern =
    /(?:^|\n)\s*(?:import|export)\s+(type\s+)?(?:[\w*{}\s,$]+?\s+from\s+)?['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)/g;
  return [...text.matchAll(pattern)].map((match) => {
    const target = match[2] ?? match[3] ?? '';
    const to = target.startsWith('.') ? relative(root, resolve(dirname(join(root, file)), target)) : target;
    return { from: file, to, typeOnly: match[1] !== undefined };
  });
}

const files = ['server', 'client', 'db']
  .flatMap((folder) => sourceFiles(join(root, folder)))
  .map((path) => relative(root, path));
const imports = files.flatMap((file) => importsOf(file, readFileSync(join(root, file), 'utf8')));

function broken(rule: (line: ImportLine) => boolean): string[] {
  return imports.filter(rule).map((line) => `${line.from} imports ${line.to}`);
}

describe('the folders import in one direction', () => {
  it('reads the imports it is meant to judge', () => {
    const read = importsOf(
      'server/planning/x/y.ts',
      "import { a } from '../z.ts';\nimport type { B } from 'pkg';\nexport { c } from './c.ts';\nconst d = await import('./d.ts');",
    );
    expect(read.map((line) => [line.to, line.typeOnly])).toEqual([
      ['server/planning/z.ts', false],
      ['pkg', true],
      ['server/planning/x/c.ts', false],
      ['server/planning/x/d.ts', false],
    ]);
    expect(imports.length).toBeGreaterThan(20);
  });

  it('keeps planning to itself: no package, no Node module, no other folder', () => {
    expect(
      broken((line) => line.from.startsWith('server/planning/') && !line.to.startsWith('server/planning/')),
    ).toEqual([]);
  });

  it('lets planning read no clock, random source, console or environment', () => {
    const forbidden =
      /\b(Date\.now|new Date\(\)|Math\.random|console\.|process\.|performance\.|setTimeout|fetch\()/;
    const offenders = files
      .filter((file) => file.startsWith('server/planning/'))
      .filter((file) =>
        forbidden.test(readFileSync(join(root, file), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')),
      );
    expect(offenders).toEqual([]);
  });

  it('lets the database import the shapes of planning, and call none of its functions', () => {
    const shapes = /^server\/planning\/(product|project-input|plan-output|problem|figure)\.ts$/;
    expect(
      broken(
        (line) =>
          line.from.startsWith('db/') &&
          line.to.startsWith('server/') &&
          !line.typeOnly &&
          !shapes.test(line.to),
      ),
    ).toEqual([]);
  });

  it('lets the client import types only from the server, and the display formats', () => {
    expect(
      broken(
        (line) =>
          line.from.startsWith('client/') &&
          (line.to.startsWith('server/') || line.to.startsWith('db/')) &&
          !line.typeOnly &&
          !line.to.startsWith('server/planning/display/'),
      ),
    ).toEqual([]);
  });

  it('keeps the server free of the client', () => {
    expect(broken((line) => !line.from.startsWith('client/') && line.to.startsWith('client/'))).toEqual([]);
  });

  it('keeps SQL in the database folder', () => {
    const sql = /\b(SELECT\s+[\w*]|INSERT\s+INTO|UPDATE\s+\w+\s+SET|DELETE\s+FROM|CREATE\s+TABLE)\b/;
    expect(
      files.filter((file) => !file.startsWith('db/') && sql.test(readFileSync(join(root, file), 'utf8'))),
    ).toEqual([]);
  });
});
