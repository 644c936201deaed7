import { z } from 'zod';
import { type AppliedChange, applyChanges } from '../../../db/apply-changes.ts';
import { Refusal } from '../../../db/refusal.ts';
import { redoEdit, undoEdit } from '../../../db/undo.ts';
import { changeAnswerSchema } from '../answer-schemas.ts';
import type { AppContext } from '../app-context.ts';
import { answerEdit } from '../change-answer.ts';
import { type Change, ROW_TABLES, type RowTable, type RowValues } from '../contract.ts';
import { refuseOtherDecimals } from '../refuse-other-decimals.ts';
import { type Route, route } from '../route.ts';
import {
  changeRequestSchema,
  partial,
  projectParams,
  revision,
  revisionBody,
  rowParams,
  rowReference,
  rowShapes,
  settingsShape,
} from '../schemas.ts';

/** Edits: of many rows at once, of one row, of the settings; undo and redo. Each answers what is different. */

const edited = { status: 200, answer: changeAnswerSchema, refusals: ['revision-stale', 'internal'] } as const;

export const rowRoutes: readonly Route[] = [
  route({
    method: 'post',
    path: '/api/projects/{id}/changes',
    summary: 'Change many rows in one transaction, as one undo step.',
    group: 'rows',
    params: projectParams,
    body: changeRequestSchema,
    ...edited,
    refusals: [...edited.refusals, 'name-taken', 'in-use'],
    handle: ({ params, body }, context, response) =>
      answerEdit(context, response, Number(params.id), (projectId) => {
        refuseOtherDecimals(() => context.plans.current(projectId).input, body.changes);
        return applyChanges(context.db, projectId, body, given(context));
      }),
  }),
  route({
    method: 'patch',
    path: '/api/projects/{id}/settings',
    summary: 'Change settings of the project.',
    group: 'rows',
    params: projectParams,
    body: z.strictObject({ revision, ...partial(settingsShape) }),
    ...edited,
    refusals: [...edited.refusals, 'in-use'],
    handle: ({ params, body: { revision, ...values } }, context, response) =>
      answerEdit(context, response, Number(params.id), (projectId) => {
        const change = { op: 'settings', values } as const;
        refuseOtherDecimals(() => context.plans.current(projectId).input, [change]);
        return one(context, projectId, revision, change);
      }),
  }),
  route({
    method: 'post',
    path: '/api/projects/{id}/undo',
    summary: 'Take back the last edit.',
    group: 'rows',
    params: projectParams,
    body: revisionBody,
    ...edited,
    refusals: [...edited.refusals, 'nothing-to-undo'],
    handle: ({ params, body }, context, response) =>
      answerEdit(context, response, Number(params.id), (projectId) =>
        undoEdit(context.db, projectId, body.revision, context.now()),
      ),
  }),
  route({
    method: 'post',
    path: '/api/projects/{id}/redo',
    summary: 'Do the last edit that was taken back again.',
    group: 'rows',
    params: projectParams,
    body: revisionBody,
    ...edited,
    refusals: [...edited.refusals, 'nothing-to-redo'],
    handle: ({ params, body }, context, response) =>
      answerEdit(context, response, Number(params.id), (projectId) =>
        redoEdit(context.db, projectId, body.revision, context.now()),
      ),
  }),
  ...ROW_TABLES.flatMap(routesOfTable),
];

function given(context: AppContext) {
  const { readLengthCell, sizeNames, now } = context;
  return { readLengthCell, sizeNames, now: now() };
}

/** A request for one change. What is refused is located in that request, not in a list of changes. */
function one(context: AppContext, projectId: number, revision: number, change: Change): AppliedChange {
  try {
    return applyChanges(context.db, projectId, { revision, changes: [change] }, given(context));
  } catch (error) {
    if (!(error instanceof Refusal) || error.field === null) throw error;
    const field = error.field.replace(/^changes\.0\.(values\.)?/, '');
    throw error.at(field === 'id' ? 'rowId' : field);
  }
}

function routesOfTable(table: RowTable): Route[] {
  const shape = partial(rowShapes[table]);
  return [
    route({
      method: 'post',
      path: `/api/projects/{id}/${table}`,
      summary: `Add a row to ${table}.`,
      group: 'rows',
      params: projectParams,
      body: z.strictObject({ revision, before: z.exactOptional(rowReference.nullable()), ...shape }),
      ...edited,
      status: 201,
      handle: ({ params, body: { revision, before, ...values } }, context, response) =>
        answerEdit(context, response, Number(params.id), (projectId) =>
          one(context, projectId, revision, {
            op: 'insert',
            table,
            before: before ?? null,
            values: values as RowValues,
          }),
        ),
    }),
    route({
      method: 'patch',
      path: `/api/projects/{id}/${table}/{rowId}`,
      summary: `Change a row of ${table}.`,
      group: 'rows',
      params: rowParams,
      body: z.strictObject({ revision, ...shape }),
      ...edited,
      // A size may be given a name that another has.
      refusals: table === 'sizes' ? [...edited.refusals, 'name-taken'] : edited.refusals,
      handle: ({ params, body: { revision, ...values } }, context, response) =>
        answerEdit(context, response, Number(params.id), (projectId) =>
          one(context, projectId, revision, {
            op: 'update',
            table,
            id: params.rowId,
            values: values as RowValues,
          }),
        ),
    }),
    route({
      method: 'delete',
      path: `/api/projects/{id}/${table}/{rowId}`,
      summary: `Delete a row of ${table}, with what belongs to it.`,
      group: 'rows',
      params: rowParams,
      body: revisionBody,
      ...edited,
      handle: ({ params, body }, context, response) =>
        answerEdit(context, response, Number(params.id), (projectId) =>
          one(context, projectId, body.revision, { op: 'delete', table, id: params.rowId }),
        ),
    }),
  ];
}
