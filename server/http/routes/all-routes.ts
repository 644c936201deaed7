import { z } from 'zod';
import { accessRoutes } from '../access.ts';
import { openApiDocument } from '../openapi.ts';
import { type Route, route } from '../route.ts';
import { VERSION } from '../version.ts';
import { airRoutes } from './air.ts';
import { attachmentRoutes } from './attachments.ts';
import { buyingRoutes } from './buying.ts';
import { calendarRoutes } from './calendar.ts';
import { catalogueRoutes } from './catalogue.ts';
import { cuttingRoutes } from './cutting.ts';
import { cuttingSearchRoutes } from './cutting-search.ts';
import { exportRoutes } from './export.ts';
import { importRoutes } from './import.ts';
import { ledgerRoutes } from './ledger.ts';
import { planRoutes } from './plan.ts';
import { programRoutes } from './program.ts';
import { projectRoutes } from './projects.ts';
import { readingRoutes } from './reading.ts';
import { rowRoutes } from './rows.ts';
import { starterRecipeRoutes } from './starter-recipes.ts';

let document: object | null = null;

const openApiRoute = route({
  method: 'get',
  path: '/api/openapi.json',
  summary: 'This document.',
  group: 'program',
  answer: z.record(z.string(), z.unknown()),
  handle: () => openApi(),
});

/** Every route that is always there. */
export const ALL_ROUTES: readonly Route[] = [
  ...programRoutes,
  openApiRoute,
  ...projectRoutes,
  ...rowRoutes,
  ...planRoutes,
  ...cuttingRoutes,
  ...cuttingSearchRoutes,
  ...calendarRoutes,
  ...buyingRoutes,
  ...ledgerRoutes,
  ...airRoutes,
  ...readingRoutes,
  ...importRoutes,
  ...exportRoutes,
  ...attachmentRoutes,
  ...catalogueRoutes,
  ...starterRecipeRoutes,
];

/** The OpenAPI document, made once. It also names the routes that are there only where a passphrase is set. */
export function openApi(): object {
  document ??= openApiDocument([...ALL_ROUTES, ...accessRoutes(() => '')], VERSION);
  return document;
}
