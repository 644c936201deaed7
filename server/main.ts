import { pino } from 'pino';
import { DatabaseProblem } from '../db/database-problem.ts';
import { StartProblem } from './start-problem.ts';
import { startServer } from './start-server.ts';
import { startSettings } from './start-settings.ts';

/** `npm start`: starts the program, says where it is, and stops it properly at Ctrl+C. */
try {
  const settings = startSettings(process.env);
  const log = pino({ level: settings.logLevel }, pino.destination(2));
  const server = await startServer(settings, log);
  console.log(`Plywright is at ${server.url} with the projects in ${server.databasePath}. Ctrl+C stops it.`);

  let stopping = false;
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.on(signal, () => {
      if (stopping) process.exit(1);
      stopping = true;
      server.close().then(
        () => process.exit(0),
        (error: unknown) => {
          log.error({ err: error }, 'stopping failed');
          process.exit(1);
        },
      );
    });
  }
} catch (error) {
  if (!(error instanceof StartProblem || error instanceof DatabaseProblem)) throw error;
  console.error(`Plywright cannot start. ${error.message}\n${error.wayOut}`);
  process.exitCode = 1;
}
