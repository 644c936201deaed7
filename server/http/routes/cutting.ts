import { z } from 'zod';
import { markPieces } from '../../../db/cut-pieces.repository.ts';
import type { FreedPiece } from '../../planning/cutting/cut-order.ts';
import type { CutPlace, CuttingAnswer, SawCut } from '../contract.ts';
import { cuttingList, isIn } from '../cutting-list.ts';
import { HttpRefusal } from '../http-refusal.ts';
import { type Route, route } from '../route.ts';
import { MOST_CHANGES, projectParams } from '../schemas.ts';

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
      markPieces(context.db, projectId, places, cut, context.now().toISOString());
      return cuttingList(context, projectId);
    },
  }),
];
