import type { Request, RequestHandler, Response, Router } from 'express';
import { z } from 'zod';
import type { AppContext } from './app-context.ts';
import type { ErrorCode } from './contract.ts';
import { parseRequest } from './parse-request.ts';

/** One route as data: the router and the OpenAPI document are both made from it. */
export interface Route {
  readonly method: 'get' | 'post' | 'put' | 'patch' | 'delete';
  /** As in OpenAPI: `/api/projects/{id}`. */
  readonly path: string;
  readonly summary: string;
  readonly group: 'projects' | 'rows' | 'plan' | 'exchange' | 'catalogue' | 'program' | 'access';
  readonly params: z.ZodObject;
  readonly query: z.ZodObject;
  /** Null when the request has no body. */
  readonly body: z.ZodType | null;
  readonly bodyType: string;
  readonly status: number;
  /** Null when the answer has no body. */
  readonly answer: z.ZodType | null;
  readonly answerType: string;
  readonly refusals: readonly ErrorCode[];
  readonly handle: (input: RouteInput, context: AppContext, response: Response) => unknown;
}

interface RouteInput<Params = unknown, Query = unknown, Body = unknown> {
  readonly params: Params;
  readonly query: Query;
  readonly body: Body;
}

interface RouteSpec<Params extends z.ZodObject, Query extends z.ZodObject, Body extends z.ZodType>
  extends Pick<Route, 'method' | 'path' | 'summary' | 'group'> {
  readonly params?: Params;
  readonly query?: Query;
  readonly body?: Body;
  readonly bodyType?: string;
  /** 200 when not given. */
  readonly status?: number;
  readonly answer: z.ZodType | null;
  readonly answerType?: string;
  /** What may be refused besides a malformed request. */
  readonly refusals?: readonly ErrorCode[];
  /** Answers the body; undefined when it has sent the answer itself. */
  readonly handle: (
    input: RouteInput<z.output<Params>, z.output<Query>, z.output<Body>>,
    context: AppContext,
    response: Response,
  ) => unknown;
}

const NOTHING = z.strictObject({});

/** Makes a route from what it takes, what it answers and how. */
export function route<
  Params extends z.ZodObject = typeof NOTHING,
  Query extends z.ZodObject = typeof NOTHING,
  Body extends z.ZodType = z.ZodUndefined,
>(spec: RouteSpec<Params, Query, Body>): Route {
  return {
    ...spec,
    params: spec.params ?? NOTHING,
    query: spec.query ?? NOTHING,
    body: spec.body ?? null,
    bodyType: spec.bodyType ?? 'application/json',
    status: spec.status ?? 200,
    answerType: spec.answerType ?? 'application/json',
    refusals: spec.refusals ?? [],
    handle: spec.handle as Route['handle'],
  };
}

/** Puts the routes on a router, in their order. Each parses strictly, hands over, and answers. */
export function mountRoutes(router: Router, routes: readonly Route[], context: AppContext): void {
  for (const one of routes) router[one.method](expressPath(one.path), handlerOf(one, context));
}

/** `/api/projects/{id}` as Express writes it: `/api/projects/:id`. */
export function expressPath(path: string): string {
  return path.replace(/\{(\w+)\}/g, ':$1');
}

function handlerOf(one: Route, context: AppContext): RequestHandler {
  return async (request: Request, response: Response) => {
    const input = {
      params: parseRequest(one.params, request.params, 'not-found'),
      query: parseRequest(one.query, { ...request.query }, 'bad-request'),
      body: one.body === null ? undefined : parseRequest(one.body, request.body, 'bad-request'),
    };
    const answer = await one.handle(input, context, response);
    if (one.answer === null && answer === undefined && !response.headersSent)
      response.status(one.status).end();
    else if (answer !== undefined) response.status(one.status).json(answer);
  };
}
