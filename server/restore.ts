import { resolve } from 'node:path';
import { backupFolder, listBackups } from '../db/backup.ts';
import { DatabaseProblem } from '../db/database-problem.ts';
import { restoreBackup } from '../db/restore-backup.ts';
import { StartProblem } from './start-problem.ts';
import { startSettings } from './start-settings.ts';

/** `npm run restore -- FILE`: puts a backup back. Without a file it lists the backups there are. */
try {
  const { databasePath } = startSettings({ PLYWRIGHT_DB: process.env.PLYWRIGHT_DB });
  const [file] = process.argv.slice(2);
  if (file === undefined) {
    const backups = listBackups(databasePath);
    console.log(
      backups.length === 0
        ? `There are no backups in ${backupFolder(databasePath)}.`
        : `Backups, newest first:\n${backups.join('\n')}\nPut one back with: npm run restore -- FILE`,
    );
  } else {
    const saved = restoreBackup(resolve(file), databasePath, new Date());
    console.log(`${databasePath} is now as in ${file}.`);
    if (saved !== null) console.log(`What was there before is in ${saved}.`);
  }
} catch (error) {
  if (!(error instanceof StartProblem || error instanceof DatabaseProblem)) throw error;
  console.error(`${error.message}\n${error.wayOut}`);
  process.exitCode = 1;
}
