import { readFileSync } from 'node:fs';
import { readCatalogue } from '../db/catalogue/read-catalogue.ts';
import { documentProblem } from './exchange/document/document-problem.ts';
import { parseDocumentBytes } from './exchange/document/parse-document-bytes.ts';
import { readProjectDocument } from './exchange/project-document.ts';
import { plan } from './planning/plan.ts';
import type { Problem } from './planning/problem.ts';

/**
 * `npm run --silent plan -- FILE.json` prints the whole plan of a project document as JSON; `-` reads standard input,
 * `--pretty` indents.
 *
 * Exit code 0: planned; what is wrong with the project is in the plan's own problems. 1: the document cannot be read;
 * its located problems are printed as JSON, and in words on standard error. 2: the command was called wrongly.
 * 3: the program failed.
 */
const USAGE = `Use: npm run --silent plan -- FILE.json [--pretty]
Prints the plan of a project document as JSON. FILE.json may be - for standard input.`;

const EXIT = { planned: 0, unreadable: 1, usage: 2, failed: 3 } as const;

async function main(args: readonly string[]): Promise<number> {
  const pretty = args.includes('--pretty');
  const [file, ...more] = args.filter((arg) => arg !== '--pretty');
  if (file === '--help' || file === '-h') {
    process.stdout.write(`${USAGE}\n`);
    return EXIT.planned;
  }
  if (file === undefined || more.length > 0 || (file.startsWith('-') && file !== '-')) {
    process.stderr.write(`${USAGE}\n`);
    return EXIT.usage;
  }
  const read = await readFrom(file);
  if (!read.ok) return refuse(read.problems, pretty);
  print(plan(read.input), pretty);
  return EXIT.planned;
}

async function readFrom(file: string): Promise<ReturnType<typeof readProjectDocument>> {
  let bytes: Uint8Array;
  try {
    bytes = file === '-' ? await standardInput() : readFileSync(file);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? ` (${String(error.code)})` : '';
    const problem = documentProblem(
      { table: 'document', id: null, field: null },
      `The file "${file}" cannot be opened${code}.`,
      'Check its name and whether you may read it.',
    );
    return { ok: false, problems: [problem] };
  }
  const parsed = parseDocumentBytes(bytes);
  return parsed.ok
    ? readProjectDocument(parsed.json, readCatalogue())
    : { ok: false, problems: [parsed.problem] };
}

async function standardInput(): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}

function refuse(problems: readonly Problem[], pretty: boolean): number {
  print({ problems }, pretty);
  for (const { message, wayOut } of problems) process.stderr.write(`${message} ${wayOut}\n`);
  return EXIT.unreadable;
}

function print(value: unknown, pretty: boolean): void {
  process.stdout.write(`${JSON.stringify(value, null, pretty ? 2 : 0)}\n`);
}

// A reader that has seen enough (`| head`) closes the pipe; that is no failure.
process.stdout.on('error', () => process.exit(EXIT.planned));

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    const words = error instanceof Error ? error.message : String(error);
    process.stderr.write(`The program failed, which is not the document's fault: ${words}\n`);
    process.exitCode = EXIT.failed;
  },
);
