import { hostname, networkInterfaces } from 'node:os';
import { fileURLToPath } from 'node:url';
import { type CuttingSettings, DEFAULT_CUTTING } from './cutting-search/cutting-settings.ts';
import { StartProblem } from './start-problem.ts';

/** What the environment says about how to start. */
export interface StartSettings {
  readonly host: string;
  readonly port: number;
  readonly databasePath: string;
  readonly passphrase: string | null;
  /** Names and addresses, besides localhost, that a browser may call the program by. */
  readonly allowedHosts: readonly string[];
  readonly logLevel: string;
  readonly cutting: CuttingSettings;
}

const DEFAULT_PORT = 4860;
const LOG_LEVELS = ['silent', 'error', 'warn', 'info', 'debug'];
const MOST_CUTTING_SECONDS = 3600;
/** Shortest passphrase, characters: it stands between a shop's network and its projects. */
const SHORTEST_PASSPHRASE = 8;

/** Reads PORT, HOST and PLYWRIGHT_*. Throws StartProblem. */
export function startSettings(env: NodeJS.ProcessEnv): StartSettings {
  const host = env.HOST || '127.0.0.1';
  const passphrase = env.PLYWRIGHT_PASSPHRASE || null;
  const local = host === 'localhost' || host === '::1' || /^127\.\d+\.\d+\.\d+$/.test(host);
  if (!local && passphrase === null)
    throw new StartProblem(
      `HOST=${host} would open the projects to everyone on the network.`,
      'Set PLYWRIGHT_PASSPHRASE as well, or leave HOST out to use this machine alone.',
    );
  if (passphrase !== null && passphrase.length < SHORTEST_PASSPHRASE)
    throw new StartProblem(
      `PLYWRIGHT_PASSPHRASE is shorter than ${SHORTEST_PASSPHRASE} characters.`,
      'Choose a longer one; a few words will do.',
    );
  const named = (env.PLYWRIGHT_HOSTS ?? '').split(',').map((name) => name.trim());
  return {
    host,
    port: portOf(env.PORT),
    databasePath: env.PLYWRIGHT_DB || fileURLToPath(new URL('../data/plywright.db', import.meta.url)),
    passphrase,
    allowedHosts: [...named.filter((name) => name !== ''), ...(local ? [] : ownNames(host))],
    logLevel: logLevelOf(env.PLYWRIGHT_LOG),
    cutting: cuttingOf(env.PLYWRIGHT_CUTTING_SECONDS),
  };
}

function portOf(text: string | undefined): number {
  if (text === undefined || text === '') return DEFAULT_PORT;
  const port = Number(text);
  if (!/^\d{1,5}$/.test(text) || port > 65_535)
    throw new StartProblem(`PORT=${text} is not a port.`, 'Give a number from 1 to 65535.');
  return port;
}

function logLevelOf(text: string | undefined): string {
  if (text === undefined || text === '') return 'warn';
  if (!LOG_LEVELS.includes(text))
    throw new StartProblem(`PLYWRIGHT_LOG=${text} is not a level.`, `Give one of ${LOG_LEVELS.join(', ')}.`);
  return text;
}

function cuttingOf(text: string | undefined): CuttingSettings {
  if (text === undefined || text === '') return DEFAULT_CUTTING;
  const seconds = Number(text);
  if (!/^\d{1,4}(\.\d{1,3})?$/.test(text) || seconds > MOST_CUTTING_SECONDS)
    throw new StartProblem(
      `PLYWRIGHT_CUTTING_SECONDS=${text} is not a time.`,
      `Give the seconds that cutting is searched after an edit, up to ${MOST_CUTTING_SECONDS}; 0 for not at all.`,
    );
  return { ...DEFAULT_CUTTING, searchMs: seconds * 1000 };
}

/** The names and addresses this machine has on the network. */
function ownNames(host: string): string[] {
  const addresses = Object.values(networkInterfaces())
    .flat()
    .flatMap((entry) => (entry === undefined ? [] : [entry]))
    .map(({ address, family }) => (family === 'IPv6' ? `[${address.replace(/%.*/, '')}]` : address));
  return [host, hostname(), `${hostname()}.local`, ...addresses];
}
