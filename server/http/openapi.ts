import { OpenAPIRegistry, OpenApiGeneratorV31 } from '@asteasolutions/zod-to-openapi';
import { errorAnswerSchema } from './answer-schemas.ts';
import type { ErrorCode } from './contract.ts';
import { STATUS_OF } from './error-answer.ts';
import type { Route } from './route.ts';

/** The OpenAPI 3.1 document of the given routes, made from the schemas they parse and answer with. */
export function openApiDocument(routes: readonly Route[], version: string) {
  const registry = new OpenAPIRegistry();
  for (const one of routes) {
    registry.registerPath({
      method: one.method,
      path: one.path,
      summary: one.summary,
      operationId: operationId(one),
      tags: [one.group],
      request: {
        params: one.params,
        query: one.query,
        ...(one.body === null
          ? {}
          : { body: { required: true, content: { [one.bodyType]: { schema: one.body } } } }),
      },
      responses: {
        [one.status]: {
          description: one.answer === null ? 'Done.' : 'The answer.',
          ...(one.answer === null ? {} : { content: { [one.answerType]: { schema: one.answer } } }),
        },
        ...refusals(one),
      },
    });
  }
  return new OpenApiGeneratorV31(registry.definitions).generateDocument({
    openapi: '3.1.0',
    info: {
      title: 'Plywright',
      version,
      description:
        'Plans plywood furniture from one part list. Every refusal has the same shape, ErrorAnswer. Every edit names the revision it was made on.',
    },
    servers: [{ url: '/' }],
  });
}

/** What a route may refuse, by status; several codes may share one. */
function refusals(one: Route) {
  const codes = new Set<ErrorCode>(one.refusals);
  if (one.body !== null || Object.keys(one.query.shape).length > 0) codes.add('bad-request');
  if (one.body !== null) codes.add('too-large');
  if (Object.keys(one.params.shape).length > 0) codes.add('not-found');
  const byStatus = new Map<number, ErrorCode[]>();
  for (const code of codes) byStatus.set(STATUS_OF[code], [...(byStatus.get(STATUS_OF[code]) ?? []), code]);
  return Object.fromEntries(
    [...byStatus].map(([status, those]) => [
      status,
      { description: those.join(', '), content: { 'application/json': { schema: errorAnswerSchema } } },
    ]),
  );
}

function operationId({ method, path }: Route): string {
  const words = path.replace(/^\/(api\/)?/, '').split(/[/{}._-]+/);
  return [method, ...words.filter((word) => word !== '')]
    .map((word, index) => (index === 0 ? word : word.charAt(0).toUpperCase() + word.slice(1)))
    .join('');
}
