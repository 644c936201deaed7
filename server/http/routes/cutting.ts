import { z } from 'zod';
import type { FreedPiece } from '../../planning/cutting/cut-order.ts';
import { changeAnswerSchema } from '../answer-schemas.ts';
import { answerEdit } from '../change-answer.ts';
import type { CutPlace, CuttingAnswer, SawCut } from '../contract.ts';
import { cuttingList, isIn } from '../cutting-list.ts';
import { HttpRefusal } from '../http-refusal.ts';
import { keepOffcut } from '../keep-offcut.ts';
import { markCut } from '../mark-cut.ts';
import { type Route, route } from '../route.ts';
import { MOST_CHANGES, projectParams, revision } from '../schemas.ts';

const place = z.strictObject({
  sheet: z.int().min(0).meta({ description: 'Which of the equal sheets, from 0.' }),
  piece: z.int().min(0).meta({ description: 'Which of the parts of the layout, from 0.' }),
}) satisfies z.ZodType<CutPlace>;

const size = { lengthMm: z.number(), widthMm: z.number() };
const freed = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('part'), piece: z.int(), partId: z.string(), ...size }),
  z.strictObject({ type: z.literal('strip'), strip: z.int(), ...size }),
  z.strictObject({ type: z.literal('offcut'), ...size }),
]) satisfies z.ZodType<FreedPiece>;

const sawCut = z
  .strictObject({
    number: z.int(),
    kind: z.enum(['trim', 'rip', 'crosscut']),
    runs: z.enum(['length', 'width']),
    strip: z.int().nullable().meta({ description: 'What lies on the saw; null is the whole sheet.' }),
    settingMm: z.number(),
    atMm: z.number(),
    fromMm: z.number(),
    toMm: z.number(),
    full: z.boolean(),
    frees: z.array(freed),
  })
  .meta({ id: 'SawCut' }) satisfies z.ZodType<SawCut>;

const cuttingAnswer = z
  .strictObject({
    revision: z.int(),
    layouts: z.array(
      z.strictObject({
        materialId: z.string(),
        layoutId: z.string(),
        key: z.string(),
        sheets: z.int(),
        parts: z.array(z.string()),
        cuts: z.array(sawCut),
        done: z.array(place),
        offcuts: z.array(z.strictObject({ ...size, count: z.int(), kept: z.array(z.int()) })),
      }),
    ),
    elsewhere: z.int(),
  })
  .meta({ id: 'CuttingAnswer' }) satisfies z.ZodType<CuttingAnswer>;

/** The saw cuts of a plan in their order, and the pieces ticked as cut. */
export const cuttingRoutes: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/projects/{id}/cutting',
    summary: 'The saw cuts of every layout in their order, and the pieces ticked as cut.',
    group: 'plan',
    params: projectParams,
    answer: cuttingAnswer,
    handle: ({ params }, context) => cuttingList(context, Number(params.id)),
  }),
  route({
    method: 'post',
    path: '/api/projects/{id}/cutting/ticks',
    summary: 'Tick pieces of a layout as cut, or take the ticks off. No edit of the project, so no undo.',
    group: 'plan',
    params: projectParams,
    body: z.strictObject({
      layout: z.string().min(1).max(100).meta({ description: 'The key of a layout of the plan.' }),
      pieces: z.array(place).min(1).max(MOST_CHANGES),
      cut: z.boolean(),
    }),
    answer: cuttingAnswer,
    handle({ params, body: { layout, pieces, cut } }, context) {
      const projectId = Number(params.id);
      const known = cuttingList(context, projectId).layouts.find(({ key }) => key === layout);
      if (known === undefined || !pieces.every((one) => isIn(one, known.sheets, known.parts.length)))
        throw new HttpRefusal(
          'not-found',
          'The plan no longer has this piece: it was changed after the layout was shown.',
          'Look at the cutting plan as it is now, and tick the piece there.',
        );
      const places = pieces.map((one) => ({ layout, ...one }));
      markCut(context, projectId, known.materialId, places, cut);
      return cuttingList(context, projectId);
    },
  }),
  route({
    method: 'post',
    path: '/api/projects/{id}/cutting/keep',
    summary:
      'Put the offcuts of one size from a sheet that has been cut among what is on hand. An edit, with undo.',
    group: 'plan',
    params: projectParams,
    body: z.strictObject({
      revision,
      layout: z.string().min(1).max(100).meta({ description: 'The key of a layout of the plan.' }),
      sheet: z.int().min(0).meta({ description: 'Which of the equal sheets, from 0.' }),
      ...size,
    }),
    answer: changeAnswerSchema,
    status: 201,
    refusals: ['revision-stale', 'not-allowed', 'internal'],
    handle: ({ params, body }, context, response) =>
      answerEdit(context, response, Number(params.id), (projectId) => keepOffcut(context, projectId, body)),
  }),
];
