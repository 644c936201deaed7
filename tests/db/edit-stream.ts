import { applyChanges } from '../../db/apply-changes.ts';
import { openDatabase } from '../../db/open.ts';
import { readProject } from '../../db/read-project.ts';
import { plainSizeNames } from './plain-size-names.ts';
import { readPlainMillimetres } from './read-plain-millimetres.ts';

/**
 * A program of its own, for being killed: makes one edit after the other in the database named by its argument, and
 * prints each new revision once the edit is acknowledged.
 */
const db = openDatabase(process.argv[2] ?? '');
const projectId = Number(process.argv[3]);
const part = readProject(db, projectId).rows.parts[0]?.id ?? '';
for (let revision = 1; ; ) {
  const applied = applyChanges(
    db,
    projectId,
    {
      revision,
      changes: [{ op: 'update', table: 'parts', id: part, values: { note: `edit ${revision + 1}` } }],
    },
    { readLengthCell: readPlainMillimetres, sizeNames: plainSizeNames, now: new Date() },
  );
  revision = applied.revision;
  process.stdout.write(`${revision}\n`);
}
