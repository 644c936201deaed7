import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import express, { type ErrorRequestHandler, type Express } from 'express';
import helmet from 'helmet';
import { DEFAULT_CALENDAR } from '../calendar-search/calendar-settings.ts';
import { calendars as openCalendars } from '../calendar-search/calendars.ts';
import { cuttingAnswers } from '../cutting-search/cutting-answers.ts';
import { cuttingSearches } from '../cutting-search/cutting-searches.ts';
import { DEFAULT_CUTTING } from '../cutting-search/cutting-settings.ts';
import { plan } from '../planning/plan.ts';
import { openAccess } from './access.ts';
import type { AppConfig, AppContext } from './app-context.ts';
import { ATTACHMENTS_PATH, attachmentBody } from './attachment-body.ts';
import { errorAnswer } from './error-answer.ts';
import { guardHost } from './guard-host.ts';
import { HttpRefusal } from './http-refusal.ts';
import { logRequests } from './log-requests.ts';
import { projectAirs } from './project-airs.ts';
import { projectEvents } from './project-events.ts';
import { projectPlans } from './project-plans.ts';
import { readLengthCell } from './read-length-cell.ts';
import { mountRoutes } from './route.ts';
import { ALL_ROUTES } from './routes/all-routes.ts';
import { sizeNames } from './size-names.ts';

/** Largest request: a paste of 20,000 rows is about 4 MB. */
const LARGEST_REQUEST = '8mb';

export interface App {
  readonly express: Express;
  /** Ends searches and event streams, so that the server can stop. */
  readonly close: () => void;
}

/** The whole program behind HTTP, on an open database. Opens nothing itself. */
export function createApp(db: Database, config: AppConfig): App {
  const { log, now = () => new Date() } = config;
  const answers = cuttingAnswers(db);
  const plans = projectPlans(db, plan, answers, now);
  const events = projectEvents();
  const settings = config.cutting ?? { ...DEFAULT_CUTTING, searchMs: 0 };
  const cutting = cuttingSearches({
    plans,
    events,
    answers,
    settings,
    log,
    now,
    worker: config.cuttingWorker,
  });
  const calendars = openCalendars({
    db,
    plans,
    events,
    settings: config.calendar ?? DEFAULT_CALENDAR,
    log,
    now,
  });
  const context: AppContext = {
    db,
    plans,
    events,
    cutting,
    calendars,
    airs: projectAirs(plans, calendars),
    readLengthCell,
    sizeNames,
    now,
  };
  const access = config.passphrase === null ? null : openAccess(config.passphrase, now);
  const app = express();
  app.disable('x-powered-by');
  app.disable('etag');
  app.set('query parser', 'simple');

  app.use(logRequests(log));
  app.use(guardHost(config.allowedHosts));
  app.use(securityHeaders());
  if (access !== null) {
    app.use(access.guard);
    app.use('/login', express.urlencoded({ extended: false, limit: '10kb' }));
    mountRoutes(app, access.routes, context);
  }
  app.use('/api', (_request, response, next) => {
    response.setHeader('Cache-Control', 'no-store');
    next();
  });
  app.use(ATTACHMENTS_PATH, attachmentBody);
  app.use(express.json({ limit: LARGEST_REQUEST }));
  mountRoutes(app, ALL_ROUTES, context);
  if (config.clientFolder !== null) app.use(clientFiles(config.clientFolder));
  app.use((request) => {
    throw new HttpRefusal(
      'unknown-route',
      `There is nothing at ${request.method} ${request.path.slice(0, 200)}.`,
      'GET /api/openapi.json lists what there is.',
    );
  });
  app.use(((error, request, response, next) => {
    const { status, body } = errorAnswer(error);
    if (status >= 500)
      log.error({ err: error, method: request.method, path: request.path }, 'request failed');
    if (response.headersSent) next(error);
    else response.status(status).json(body);
  }) satisfies ErrorRequestHandler);
  return {
    express: app,
    close() {
      cutting.close();
      calendars.close();
      events.close();
    },
  };
}

/** Scripts and styles from here alone. The grid sets styles on its elements, hence 'unsafe-inline' for styles. */
function securityHeaders() {
  return helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", 'data:'],
        fontSrc: ["'self'", 'data:'],
        objectSrc: ["'none'"],
        baseUri: ["'self'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    // The program is served over plain HTTP on one's own machine or shop network.
    strictTransportSecurity: false,
    referrerPolicy: { policy: 'no-referrer' },
  });
}

function clientFiles(folder: string) {
  if (existsSync(join(folder, 'index.html')))
    return express.static(folder, { etag: true, index: 'index.html', fallthrough: true });
  return ((request, response, next) => {
    if (request.method === 'GET' && request.path === '/')
      response
        .status(503)
        .type('text')
        .send('The screens are not built yet. Run `npm run build`, then reload.\n');
    else next();
  }) satisfies express.RequestHandler;
}
