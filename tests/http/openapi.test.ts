import { describe, expect, it } from 'vitest';
import { ROW_TABLES } from '../../db/project-rows.ts';
import { documentJsonSchema } from '../../server/exchange/document-json-schema.ts';
import { ALL_ROUTES } from '../../server/http/routes/all-routes.ts';
import { openApp } from './open-app.ts';

interface Layer {
  readonly route?: { readonly path: string; readonly methods: Readonly<Record<string, boolean>> };
}

interface Operation {
  readonly operationId: string;
  readonly responses: Readonly<Record<string, unknown>>;
  readonly parameters?: readonly { readonly name: string; readonly in: string }[];
}

type Document = {
  readonly openapi: string;
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
};

/** Every `$ref` of a document. */
function references(place: unknown): string[] {
  if (typeof place !== 'object' || place === null) return [];
  return Object.entries(place).flatMap(([key, value]) =>
    key === '$ref' ? [String(value)] : references(value),
  );
}

describe('the OpenAPI document', () => {
  it('describes every route that the router has, and no other', async () => {
    // With a passphrase, so that the routes which are there only then are walked as well.
    const app = openApp({ passphrase: 'four grey planes' });
    const routes = (app.express.router as unknown as { stack: Layer[] }).stack.flatMap(({ route }) =>
      route === undefined
        ? []
        : Object.keys(route.methods).map((method) => `${method} ${route.path.replace(/:(\w+)/g, '{$1}')}`),
    );
    expect(routes.length).toBeGreaterThan(50);
    const { body } = await openApp().send('get', '/api/openapi.json');
    const { paths } = body as Document;
    const described = Object.entries(paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method} ${path}`),
    );
    expect(described.toSorted()).toEqual(routes.toSorted());
  });

  it('is of version 3.1 and complete: every reference resolves, every path parameter is declared', async () => {
    const { body } = await openApp().send('get', '/api/openapi.json');
    const document = body as Document;
    expect(document.openapi).toBe('3.1.0');
    const refs = [...new Set(references(document))];
    expect(refs.length).toBeGreaterThan(20);
    for (const ref of refs) {
      const target = ref
        .slice(2)
        .split('/')
        .reduce<unknown>((place, step) => (place as Record<string, unknown>)?.[step], document);
      expect([ref, typeof target]).toEqual([ref, 'object']);
    }
    const operations = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.values(methods).map((operation) => ({ path, operation })),
    );
    const ids = operations.map(({ operation }) => operation.operationId);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { path, operation } of operations) {
      const declared = (operation.parameters ?? []).filter((one) => one.in === 'path').map((one) => one.name);
      expect(declared).toEqual([...path.matchAll(/\{(\w+)\}/g)].map((match) => match[1]));
    }
  });

  it('says of every editing route that it may answer 409', () => {
    const edits = ALL_ROUTES.filter((one) => one.group === 'rows');
    expect(edits).toHaveLength(4 + 3 * ROW_TABLES.length);
    for (const one of edits) expect(one.refusals).toContain('revision-stale');
  });

  it('stands beside the schema of the project document', async () => {
    const app = openApp();
    const { body } = await app.send('get', '/api/schema');
    expect(body).toEqual(documentJsonSchema());
    expect(JSON.stringify(body)).toContain('plywright-project');
  });
});
