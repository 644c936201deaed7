import { z } from 'zod';
import type { AdviceOutcome, AdviceView, CuttingSearchAnswer, MaterialSearch } from '../contract.ts';
import { HttpRefusal } from '../http-refusal.ts';
import { type Route, route } from '../route.ts';
import { projectParams } from '../schemas.ts';

const outcome = z.strictObject({
  stocks: z.number(),
  costMinor: z.number().nullable(),
}) satisfies z.ZodType<AdviceOutcome>;

const advice = z
  .strictObject({
    kind: z.enum(['smaller', 'fewer', 'kerf', 'grain', 'size']),
    partIds: z.array(z.string()),
    sentence: z.string(),
    before: outcome,
    after: outcome,
  })
  .meta({ id: 'CuttingAdvice' }) satisfies z.ZodType<AdviceView>;

const material = z
  .strictObject({
    id: z.string(),
    state: z.enum(['running', 'waiting', 'idle', 'kept', 'proven', 'failed']).meta({
      description:
        'kept: not searched, since pieces of its plan are ticked as cut. proven: no plan costs less. failed: the search broke down.',
    }),
    since: z.iso.datetime(),
    budgetMs: z.number(),
    searchedMs: z.number(),
    complete: z.boolean().meta({ description: 'Nothing is left to try.' }),
    stocks: z.number().nullable(),
    boundStocks: z.number().nullable(),
    costMinor: z.number().nullable(),
    boundCostMinor: z.number().nullable(),
    advice: z.array(advice).nullable().meta({ description: 'Null while it has not been worked out.' }),
  })
  .meta({ id: 'MaterialSearch' }) satisfies z.ZodType<MaterialSearch>;

const searchAnswer = z
  .strictObject({
    sequence: z
      .int()
      .meta({ description: 'Rises with every answer since the start; of two that cross, the later holds.' }),
    revision: z.int(),
    planVersion: z
      .int()
      .meta({ description: 'Another than before: the plan has become better at the same revision.' }),
    materials: z.array(material),
  })
  .meta({ id: 'CuttingSearchAnswer' }) satisfies z.ZodType<CuttingSearchAnswer>;

const noBody = z.preprocess((given) => given ?? {}, z.strictObject({}));

/** The searches for better cutting that go on beside the editing. */
export const cuttingSearchRoutes: readonly Route[] = [
  route({
    method: 'get',
    path: '/api/projects/{id}/cutting/search',
    summary: 'How the searches for better cutting stand, and what small changes would save.',
    group: 'plan',
    params: projectParams,
    answer: searchAnswer,
    handle: ({ params }, { cutting }) => cutting.state(Number(params.id)),
  }),
  route({
    method: 'post',
    path: '/api/projects/{id}/cutting/search',
    summary: 'Search for better cutting again and longer: of one material, or of all.',
    group: 'plan',
    params: projectParams,
    body: z.preprocess(
      (given) => given ?? {},
      z.strictObject({ materialId: z.exactOptional(z.string().min(1).max(100)) }),
    ),
    status: 202,
    answer: searchAnswer,
    handle({ params, body: { materialId } }, { cutting }) {
      const id = Number(params.id);
      if (!cutting.search(id, materialId ?? null))
        throw new HttpRefusal(
          'not-found',
          `The project cuts nothing from “${materialId}”.`,
          'Name a sheet or board product that a part is made of, or leave materialId out to search all.',
        );
      return cutting.state(id);
    },
  }),
  route({
    method: 'post',
    path: '/api/projects/{id}/cutting/stop',
    summary: 'End the searches of a project; what was found is kept.',
    group: 'plan',
    params: projectParams,
    body: noBody,
    answer: searchAnswer,
    handle({ params }, { cutting }) {
      cutting.stop(Number(params.id));
      return cutting.state(Number(params.id));
    },
  }),
];
