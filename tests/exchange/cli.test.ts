import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import type { Plan } from '../../server/planning/plan-output.ts';
import type { Problem } from '../../server/planning/problem.ts';
import { smallDocument } from './small-document.ts';

/** The command line as it is called, in a process of its own. */

const root = fileURLToPath(new URL('../../', import.meta.url));
const demo = join(root, 'db/demo/bicycle-workshop-wall-cabinet.json');
const scratch = mkdtempSync(join(tmpdir(), 'plywright-cli-'));
afterAll(() => rmSync(scratch, { recursive: true }));

interface Run {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

function run(args: readonly string[], input = ''): Promise<Run> {
  return collect(
    spawn(join(root, 'node_modules/.bin/tsx'), ['server/cli.ts', ...args], { cwd: root }),
    input,
  );
}

function collect(child: ReturnType<typeof spawn>, input: string): Promise<Run> {
  return new Promise((resolve, reject) => {
    let out = '';
    let err = '';
    child.stdout?.on('data', (chunk) => (out += String(chunk)));
    child.stderr?.on('data', (chunk) => (err += String(chunk)));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
    child.stdin?.on('error', () => undefined);
    child.stdin?.end(input);
  });
}

function file(name: string, text: string | Uint8Array): string {
  const path = join(scratch, name);
  writeFileSync(path, text);
  return path;
}

/** What an unreadable document must answer: problems as JSON, the same in words, and no stack. */
function refusal({ code, out, err }: Run): readonly Problem[] {
  expect(code).toBe(1);
  const { problems } = JSON.parse(out) as { problems: readonly Problem[] };
  expect(err.trimEnd().split('\n')).toEqual(problems.map(({ message, wayOut }) => `${message} ${wayOut}`));
  expect(err).not.toMatch(/\n\s+at |node_modules/);
  return problems;
}

describe('the command line', () => {
  it('prints the plan of a file as one line of JSON', async () => {
    const { code, out, err } = await run([demo]);
    expect([code, err]).toEqual([0, '']);
    expect(out.trimEnd().split('\n').length).toBe(1);
    const plan = JSON.parse(out) as Plan;
    expect(plan.parts.length).toBe(10);
    expect(plan.buy.totalMinor.value).toBeGreaterThan(0);
    expect(plan.parts[0]?.cutLengthMm.working.rule).not.toBe('');
  });

  it('is the same through npm, from standard input, and indented', async () => {
    const child = spawn('npm', ['run', '--silent', 'plan', '--', '-', '--pretty'], { cwd: root });
    const [piped, direct] = await Promise.all([collect(child, readFileSync(demo, 'utf8')), run([demo])]);
    expect([piped.code, piped.err]).toEqual([0, '']);
    expect(piped.out.split('\n').length).toBeGreaterThan(100);
    expect(JSON.parse(piped.out)).toEqual(JSON.parse(direct.out));
  });

  it("leaves a project's own problems in its plan", async () => {
    const document = { ...smallDocument, parts: [{ name: 'Seat', length: '21 13/1', width: 300 }] };
    const { code, out } = await run(['-'], JSON.stringify(document));
    expect(code).toBe(0);
    expect((JSON.parse(out) as Plan).problems.some(({ severity }) => severity === 'error')).toBe(true);
  });

  it('refuses a document with an unknown key, at its place', async () => {
    const document = { ...smallDocument, parts: [{ name: 'Seat', widht: 300 }] };
    const problems = refusal(await run([file('unknown-key.json', JSON.stringify(document))]));
    expect(problems.map(({ code, at }) => [code, at])).toEqual([
      ['document-unreadable', { table: 'parts', id: '1', field: 'widht' }],
    ]);
  });

  it('refuses an endless number', async () => {
    const text = JSON.stringify(smallDocument).replace('"length":1200', '"length":1e999');
    expect(refusal(await run(['-'], text)).map(({ at }) => at.field)).toEqual(['length']);
  });

  it.each([
    ['text that is not JSON', '{"format": NaN}'],
    ['an empty file', ''],
    ['half a file', JSON.stringify(smallDocument).slice(0, 200)],
  ])('refuses %s', async (_, text) => {
    expect(refusal(await run(['-'], text)).length).toBe(1);
  });

  it('refuses a file that is not there, and a folder', async () => {
    const [missing, folder] = await Promise.all([run([join(scratch, 'gone.json')]), run([scratch])]);
    expect(refusal(missing)[0]?.message).toMatch(/gone\.json" cannot be opened \(ENOENT\)/);
    expect(refusal(folder)[0]?.message).toMatch(/cannot be opened \(EISDIR\)/);
  });

  it.each([[[]], [['a.json', 'b.json']], [['--fast', 'a.json']], [['--pretty']]])(
    'says how it is used when called with %j',
    async (args) => {
      const { code, out, err } = await run(args);
      expect([code, out]).toEqual([2, '']);
      expect(err).toMatch(/^Use: npm run --silent plan -- FILE\.json/);
    },
  );

  it('says how it is used when asked, which is no mistake', async () => {
    const { code, out, err } = await run(['--help']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Use: /);
  });

  it('is not upset by a reader that leaves early', async () => {
    const line = `node_modules/.bin/tsx server/cli.ts db/demo/reading-room-window-seat.json | head -c 10`;
    const child = spawn('bash', ['-o', 'pipefail', '-c', line], { cwd: root });
    const { code, out, err } = await collect(child, '');
    expect([code, out, err]).toEqual([0, '{"parts":[', '']);
  });
});
