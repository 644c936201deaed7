import { z } from 'zod';
import { supplierMessage } from '../../planning/buying/supplier-message.ts';
import { buyingAnswerSchema, supplierMessageSchema } from '../buying-schemas.ts';
import { projectBuying } from '../project-buying.ts';
import { type Route, route } from '../route.ts';
import { projectParams } from '../schemas.ts';

/** How long the first answer waits for a coat calendar that is being worked out, ms. */
const CALENDAR_WAIT_MS = 1500;

/** The buy list with its orders and the stock, and what to write to a supplier. */
export const buyingRoutes: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/projects/{id}/buying',
    summary: 'What is to be ordered from whom and until when, what is on its way, and what is in stock.',
    group: 'plan',
    params: projectParams,
    answer: buyingAnswerSchema,
    async handle({ params }, context) {
      const projectId = Number(params.id);
      if (context.calendars.state(projectId).plan === null)
        await context.calendars.settled(projectId, CALENDAR_WAIT_MS);
      return projectBuying(context, projectId);
    },
  }),
  route({
    method: 'get',
    path: '/api/projects/{id}/supplier-message',
    summary: 'A text to a supplier with what is to be ordered there; with prices only when asked for.',
    group: 'exchange',
    params: projectParams,
    query: z.strictObject({
      supplier: z.string().max(100).meta({ description: 'Id of a supplier; empty: no supplier named.' }),
      prices: z.exactOptional(z.enum(['no', 'yes'])),
    }),
    answer: supplierMessageSchema,
    handle({ params, query }, context) {
      const projectId = Number(params.id);
      const buying = projectBuying(context, projectId);
      const { settings, catalogue } = context.plans.current(projectId).fullInput;
      return supplierMessage({
        buying,
        supplierId: query.supplier,
        prices: query.prices === 'yes',
        settings,
        products: catalogue.products,
      });
    },
  }),
];
