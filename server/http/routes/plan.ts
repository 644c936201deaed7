import { z } from 'zod';
import { workingSchema } from '../answer-schemas.ts';
import { HttpRefusal } from '../http-refusal.ts';
import { planSchema, planViewSchema } from '../plan-schemas.ts';
import { quoteAnswer } from '../quote-answer.ts';
import { type Route, route } from '../route.ts';
import { projectParams } from '../schemas.ts';
import { workingAt } from '../working-at.ts';

/** Paths that begin so are figures of the air check. */
const AIR = 'air/';

/** The plan of a project, the working of one figure, and word of new revisions. */
export const planRoutes: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/projects/{id}/plan',
    summary: 'The plan with bare numbers, or with all workings (workings=1).',
    group: 'plan',
    params: projectParams,
    query: z.strictObject({ workings: z.exactOptional(z.enum(['0', '1'])) }),
    answer: z.union([planViewSchema, planSchema]),
    handle({ params, query }, { plans }) {
      const planned = plans.current(Number(params.id));
      return query.workings === '1' ? planned.plan : planned.view;
    },
  }),
  route({
    method: 'get',
    path: '/api/projects/{id}/working',
    summary: 'How one figure was worked out, by its path: parts/12/cutLengthMm, or quotes/3/net.',
    group: 'plan',
    params: projectParams,
    query: z.strictObject({ at: z.string().min(1).max(1000) }),
    answer: workingSchema,
    handle({ params, query: { at } }, context) {
      const { plans, airs } = context;
      const projectId = Number(params.id);
      const [, quoteId, field] = /^quotes\/(\d{1,15})\/(\w+)$/.exec(at) ?? [];
      const figure =
        quoteId !== undefined && field !== undefined
          ? workingAt(quoteAnswer(projectId, quoteId, context), field)
          : at.startsWith(AIR)
            ? workingAt(airs.plan(projectId), at.slice(AIR.length))
            : workingAt(plans.current(projectId).plan, at);
      if (figure === undefined)
        throw new HttpRefusal(
          'not-found',
          `The plan has no figure at “${at.slice(0, 100)}”.`,
          'The row may be gone: read the plan again, and open a figure it has.',
        );
      return { at, figure };
    },
  }),
  route({
    method: 'get',
    path: '/api/projects/{id}/events',
    summary:
      'Server-sent events: "revision" with the new revision, "catalogue" when the catalogue has changed, "cutting" when a search for better cutting goes on.',
    group: 'plan',
    params: projectParams,
    answer: z.string(),
    answerType: 'text/event-stream',
    handle({ params }, { plans, events }, response) {
      const projectId = Number(params.id);
      events.open(projectId, plans.current(projectId).project.revision, response);
    },
  }),
];
