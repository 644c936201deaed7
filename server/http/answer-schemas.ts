import { z } from 'zod';
import type { ProblemCode } from '../planning/problem.ts';
import {
  type ChangeAnswer,
  type DeletedProject,
  type ErrorAnswer,
  type ErrorCode,
  type ProjectRows,
  type ProjectState,
  type ProjectSummary,
  type ReadingAnswer,
  type ReadingName,
  ROW_TABLES,
  type RowTable,
} from './contract.ts';
import { oneOf } from './one-of.ts';
import { figureSchema, planViewSchema } from './plan-schemas.ts';
import { currency, rowShapes, settingsSchema, units } from './schemas.ts';

/** What answers hold; checked against `contract.ts` by the compiler and against real answers by the tests. */

const rowSchemas = Object.fromEntries(
  ROW_TABLES.map((table) => [
    table,
    z
      .strictObject({ id: z.string(), position: z.number(), ...rowShapes[table] })
      .meta({ id: `${table}-row` }),
  ]),
) as unknown as { readonly [Table in RowTable]: z.ZodType<ProjectRows[Table][number]> };

function forEachTable<Schema extends z.ZodType>(make: (table: RowTable) => Schema) {
  return Object.fromEntries(ROW_TABLES.map((table) => [table, make(table)])) as Record<RowTable, Schema>;
}

const undoMenu = {
  canUndo: z.boolean(),
  canRedo: z.boolean(),
  undoLabel: z.string().nullable(),
  redoLabel: z.string().nullable(),
};

export const projectSummarySchema = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    units,
    currency,
    revision: z.int(),
    updatedAt: z.iso.datetime(),
  })
  .meta({ id: 'ProjectSummary' }) satisfies z.ZodType<ProjectSummary>;

export const deletedProjectSchema = z
  .strictObject({ id: z.string(), name: z.string(), deletedAt: z.iso.datetime() })
  .meta({ id: 'DeletedProject' }) satisfies z.ZodType<DeletedProject>;

export const projectStateSchema = z
  .strictObject({
    id: z.string(),
    revision: z.int(),
    settings: settingsSchema,
    rows: z.strictObject(
      forEachTable((table) => z.array(rowSchemas[table])),
    ) as unknown as z.ZodType<ProjectRows>,
    plan: planViewSchema,
    ...undoMenu,
  })
  .meta({ id: 'ProjectState' }) satisfies z.ZodType<ProjectState>;

export const changeAnswerSchema = z
  .strictObject({
    revision: z.int(),
    settings: settingsSchema,
    changed: z.strictObject(
      forEachTable((table) => z.exactOptional(z.array(rowSchemas[table]))),
    ) as unknown as z.ZodType<ChangeAnswer['changed']>,
    removed: z.strictObject(forEachTable(() => z.exactOptional(z.array(z.string())))) as unknown as z.ZodType<
      ChangeAnswer['removed']
    >,
    inserted: z.record(z.string(), z.string()).meta({ description: 'tempId to id.' }),
    plan: planViewSchema.meta({ description: 'Its parts are only those whose figures changed.' }),
    layoutsLeftOut: z
      .boolean()
      .meta({ description: 'The plan comes without layouts and rolls: the list is long.' }),
    removedPartPlans: z.array(z.string()),
    ...undoMenu,
  })
  .meta({ id: 'ChangeAnswer' }) satisfies z.ZodType<ChangeAnswer>;

export const workingSchema = z.strictObject({ at: z.string(), figure: figureSchema });

const readingNames = z.array(
  z.strictObject({
    name: z.string(),
    id: z.string().nullable(),
    mm: z.number().nullable(),
  }) satisfies z.ZodType<ReadingName>,
);

export const readingAnswerSchema = z
  .discriminatedUnion('ok', [
    z.strictObject({
      ok: z.literal(true),
      mm: z.number().nullable(),
      quantity: z.int().nullable(),
      display: z.strictObject({ project: z.string(), exact: z.string().nullable() }),
      names: readingNames,
    }),
    z.strictObject({
      ok: z.literal(false),
      code: (z.string() as unknown as z.ZodType<ProblemCode>).nullable(),
      message: z.string(),
      wayOut: z.string(),
      names: readingNames,
    }),
  ])
  .meta({ id: 'ReadingAnswer' }) satisfies z.ZodType<ReadingAnswer>;

const errorCode = oneOf<ErrorCode>({
  'bad-request': true,
  'not-found': true,
  'unknown-route': true,
  'revision-stale': true,
  'nothing-to-undo': true,
  'nothing-to-redo': true,
  'in-use': true,
  'name-taken': true,
  'too-large': true,
  'type-not-allowed': true,
  'not-allowed': true,
  internal: true,
});

export const errorAnswerSchema = z
  .strictObject({
    error: z.strictObject({
      code: errorCode,
      message: z.string(),
      wayOut: z.string(),
      field: z.string().nullable(),
      revision: z.exactOptional(z.int()),
      faults: z.exactOptional(z.array(z.strictObject({ field: z.string(), message: z.string() }))),
    }),
  })
  .meta({ id: 'ErrorAnswer' }) satisfies z.ZodType<ErrorAnswer>;
