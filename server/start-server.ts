import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import type { Database } from 'better-sqlite3';
import type { Logger } from 'pino';
import { backUp } from '../db/backup.ts';
import { openDatabase } from '../db/open.ts';
import { createApp } from './http/create-app.ts';
import { prepareDatabase } from './prepare-database.ts';
import { StartProblem } from './start-problem.ts';
import type { StartSettings } from './start-settings.ts';

const CLIENT_FOLDER = fileURLToPath(new URL('../client/dist', import.meta.url));
const DAY_MS = 24 * 60 * 60 * 1000;
/** How long open requests may take to end when the program stops, ms. */
const PATIENCE_MS = 3000;

export interface RunningServer {
  readonly url: string;
  readonly databasePath: string;
  readonly db: Database;
  /** Lets open requests end, then closes the database. */
  readonly close: () => Promise<void>;
}

/** Opens the database, brings it up to date, backs it up, and listens. Throws StartProblem or DatabaseProblem. */
export async function startServer(settings: StartSettings, log: Logger): Promise<RunningServer> {
  const db = openDatabase(settings.databasePath);
  try {
    prepareDatabase(db, new Date());
    backUpQuietly(db, log);
    const { passphrase, allowedHosts, cutting } = settings;
    const app = createApp(db, { clientFolder: CLIENT_FOLDER, allowedHosts, passphrase, log, cutting });
    const server = createServer(app.express);
    await listen(server, settings);
    const daily = setInterval(() => backUpQuietly(db, log), DAY_MS);
    daily.unref();
    const { port } = server.address() as AddressInfo;
    return {
      url: `http://${settings.host.includes(':') ? `[${settings.host}]` : settings.host}:${port}`,
      databasePath: settings.databasePath,
      db,
      async close() {
        clearInterval(daily);
        app.close();
        const closed = once(server, 'close');
        server.close();
        const cut = setTimeout(() => server.closeAllConnections(), PATIENCE_MS);
        await closed;
        clearTimeout(cut);
        db.close();
      },
    };
  } catch (error) {
    db.close();
    throw error;
  }
}

async function listen(server: ReturnType<typeof createServer>, { host, port }: StartSettings): Promise<void> {
  server.listen(port, host);
  try {
    await once(server, 'listening');
  } catch (error) {
    const { code } = error as { code?: string };
    if (code === 'EADDRINUSE')
      throw new StartProblem(
        `Port ${port} is in use, perhaps by another Plywright.`,
        'Stop the other program, or set PORT to another number.',
      );
    if (code === 'EACCES' || code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
      throw new StartProblem(
        `Listening on ${host}:${port} is not possible (${code}).`,
        'Set PORT to a number above 1023, and HOST to an address of this machine.',
      );
    throw error;
  }
}

/** A backup that fails must not keep anyone from working; it is logged. */
function backUpQuietly(db: Database, log: Logger): void {
  try {
    backUp(db, 'daily', new Date());
  } catch (error) {
    log.warn({ err: error }, 'the backup could not be written');
  }
}
