import { airAnswerSchema } from '../air-schemas.ts';
import { type Route, route } from '../route.ts';
import { projectParams } from '../schemas.ts';

/** What the coats of the calendar do to the air of the shop. */
export const airRoutes: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/projects/{id}/air',
    summary:
      'The air check of the coat calendar as last worked out: vapour, fresh air needed, and when the piece may come indoors.',
    group: 'plan',
    params: projectParams,
    answer: airAnswerSchema,
    handle: ({ params }, { airs }) => airs.answer(Number(params.id)),
  }),
];
