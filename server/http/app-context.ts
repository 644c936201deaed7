import type { Database } from 'better-sqlite3';
import type { Logger } from 'pino';
import type { SizeNames } from '../../db/rename-size.ts';
import type { ReadLengthCell } from '../../db/row-columns.ts';
import type { CalendarSettings } from '../calendar-search/calendar-settings.ts';
import type { Calendars } from '../calendar-search/calendars.ts';
import type { CuttingSearches } from '../cutting-search/cutting-searches.ts';
import type { CuttingSettings } from '../cutting-search/cutting-settings.ts';
import type { ProjectAirs } from './project-airs.ts';
import type { ProjectEvents } from './project-events.ts';
import type { ProjectPlans } from './project-plans.ts';

export interface AppConfig {
  /** Folder of the built client; null where only the interface for programs is served. */
  readonly clientFolder: string | null;
  /** Names and addresses, besides those of this machine to itself, under which the program may be called. */
  readonly allowedHosts: readonly string[];
  /** Asked for before anything is shown; null where only this machine can reach the program. */
  readonly passphrase: string | null;
  readonly log: Logger;
  readonly now?: () => Date;
  /** How long cutting is searched after an edit; not at all when not given. */
  readonly cutting?: CuttingSettings;
  /** The module that the thread which searches cutting runs, where it is another than the program's own. */
  readonly cuttingWorker?: URL;
  /** How calendars are worked out beside the editing. */
  readonly calendar?: CalendarSettings;
}

/** What the handlers of the routes work with. */
export interface AppContext {
  readonly db: Database;
  readonly plans: ProjectPlans;
  readonly events: ProjectEvents;
  readonly cutting: CuttingSearches;
  readonly calendars: Calendars;
  readonly airs: ProjectAirs;
  readonly readLengthCell: ReadLengthCell;
  readonly sizeNames: SizeNames;
  readonly now: () => Date;
}
