import { readFileSync } from 'node:fs';
import { readCatalogue } from '../db/catalogue/read-catalogue.ts';
import { readProjectDocument } from './exchange/project-document.ts';
import { plan } from './planning/plan.ts';
import type { Problem } from './planning/problem.ts';

/**
 * `npm run --silent plan -- FILE.json` prints the whole plan of a project document as JSON; `-` reads standard input.
 *
 * Exit code 0: planned (the plan's own problems are in it). 1: the document cannot be read; its located problems are
 * printed as JSON, and in words on standard error. 2: the command was called wrongly.
 */
const USAGE = 'Use: npm run --silent plan -- FILE.json [--pretty]   (FILE - reads standard input)';

function unreadable(message: string, wayOut: string): Problem {
  return {
    code: 'document-unreadable',
    severity: 'error',
    at: { table: 'document', id: null, field: null },
    message,
    wayOut,
  };
}

function refuse(problems: readonly Problem[], indent: number): number {
  process.stdout.write(`${JSON.stringify({ problems }, null, indent)}\n`);
  for (const { at, message, wayOut } of problems) {
    const place = [at.table, at.id, at.field].filter((part) => part !== null).join(' / ');
    process.stderr.write(`${place}: ${message} ${wayOut}\n`);
  }
  return 1;
}

function main(args: readonly string[]): number {
  const indent = args.includes('--pretty') ? 2 : 0;
  const files = args.filter((arg) => arg !== '--pretty');
  const [file] = files;
  if (file === undefined || files.length > 1 || (file.startsWith('-') && file !== '-')) {
    process.stderr.write(`${USAGE}\n`);
    return 2;
  }
  let text: string;
  try {
    text = readFileSync(file === '-' ? 0 : file, 'utf8');
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return refuse(
      [
        unreadable(
          `The file ${file} cannot be opened: ${reason}.`,
          'Check the name and the rights of the file.',
        ),
      ],
      indent,
    );
  }
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return refuse(
      [
        unreadable(
          `The text is not JSON: ${reason}.`,
          'Correct it at the place named; numbers such as NaN are not JSON.',
        ),
      ],
      indent,
    );
  }
  const reading = readProjectDocument(json, readCatalogue());
  if (!reading.ok) return refuse(reading.problems, indent);
  process.stdout.write(`${JSON.stringify(plan(reading.input), null, indent)}\n`);
  return 0;
}

process.exitCode = main(process.argv.slice(2));
