import { readFileSync } from 'node:fs';
import { readCatalogue } from '../../db/catalogue/read-catalogue.ts';
import { readProjectDocument } from '../../server/exchange/project-document.ts';
import type { ProjectInput } from '../../server/planning/project-input.ts';

/** The shipped window-seat demo as planner input. */
export function demoProject(): ProjectInput {
  const file = new URL('../../db/demo/reading-room-window-seat.json', import.meta.url);
  const read = readProjectDocument(JSON.parse(readFileSync(file, 'utf8')), readCatalogue());
  if (!read.ok) throw new Error(`the demo document is unreadable: ${JSON.stringify(read.problems)}`);
  return read.input;
}
