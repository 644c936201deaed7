import { z } from 'zod';
import type {
  CalendarBatchPlan,
  CalendarBlock,
  CalendarTaskPlan,
} from '../planning/calendar/calendar-plan.ts';
import type { CalendarAir, CalendarAnswer, CalendarDay, CalendarPlan, ClockShift } from './contract.ts';
import { problemSchema } from './plan-schemas.ts';
import { changeSchema, method, stepKind } from './schemas.ts';

/** What the coat calendar looks like in an answer; checked against the contract by the compiler. */

const minute = z.number();
const minuteOrNull = z.number().nullable();

const task = z
  .strictObject({
    id: z.string(),
    batchId: z.string(),
    recipeId: z.string(),
    stepId: z.string(),
    number: z.int(),
    kind: stepKind,
    name: z.string(),
    method: method.nullable(),
    face: z.enum(['show', 'back', 'both']),
    areaM2: z.number(),
    state: z.enum(['planned', 'pinned', 'done', 'assumed']),
    startMinute: minute,
    endMinute: minute,
    handsOnMin: z.number(),
    scuffFirst: z.boolean(),
    layFromMinute: minuteOrNull,
    layToMinute: minuteOrNull,
    touchDryMinute: minuteOrNull,
    handleDryMinute: minuteOrNull,
    allowedFromMinute: minute,
    allowedToMinute: minuteOrNull,
    heldBy: z
      .strictObject({
        kind: z.enum([
          'pin',
          'start',
          'material',
          'before',
          'drying',
          'hours',
          'air',
          'hands',
          'dust',
          'rack',
          'vapour',
          'next-coat',
          'nothing',
        ]),
        taskId: z.string().nullable(),
      })
      .nullable(),
  })
  .meta({ id: 'CalendarTask' }) satisfies z.ZodType<CalendarTaskPlan>;

const batch = z.strictObject({
  id: z.string(),
  pieces: z.array(z.strictObject({ pieceId: z.string(), count: z.int() })),
  footprintM2: z.number(),
  readyToHandleMinute: minute,
  readyToAssembleMinute: minute,
  curedMinute: minuteOrNull,
}) satisfies z.ZodType<CalendarBatchPlan>;

const block = z.strictObject({
  kind: z.enum([
    'working-window',
    'air',
    'drying',
    'rack',
    'recoat',
    'pin',
    'done',
    'hands',
    'dust',
    'vapour',
    'horizon',
  ]),
  taskId: z.string().nullable(),
  message: z.string(),
  waysOut: z.array(
    z.strictObject({
      change: z.enum([
        'drop-pin',
        'longer-windows',
        'open-days-off',
        'more-hands',
        'larger-rack',
        'smaller-batches',
        'warmer-shop',
        'drier-shop',
        'warmer-wood',
        'sand-apart',
        'longer-horizon',
        'forget-done',
      ]),
      value: z.number().nullable(),
      taskId: z.string().nullable(),
      message: z.string(),
      readyToAssembleMinute: minute,
    }),
  ),
}) satisfies z.ZodType<CalendarBlock>;

const plan = z
  .strictObject({
    state: z.enum(['planned', 'nothing-to-do', 'does-not-fit', 'not-found']),
    tasks: z.array(task),
    batches: z.array(batch),
    readyToHandleMinute: minuteOrNull,
    readyToAssembleMinute: minuteOrNull,
    curedMinute: minuteOrNull,
    uncured: z.array(
      z.strictObject({
        recipeId: z.string(),
        stepId: z.string(),
        name: z.string(),
        because: z.enum(['not-known', 'never']),
      }),
    ),
    boundMinute: minuteOrNull,
    gap: z.number().nullable(),
    proven: z.boolean(),
    visits: z.int(),
    visitsProven: z.boolean(),
    blocks: z.array(block),
    problems: z.array(problemSchema),
  })
  .meta({ id: 'CalendarPlan' }) satisfies z.ZodType<CalendarPlan>;

const day = z.strictObject({
  date: z.string(),
  weekday: z.int(),
  fromMinute: minute,
  toMinute: minute,
  windows: z.array(z.strictObject({ fromMinute: minute, toMinute: minute })),
  off: z.boolean(),
  note: z.string(),
}) satisfies z.ZodType<CalendarDay>;

const air = z.strictObject({
  minute,
  temperatureC: z.number(),
  humidityPercent: z.number(),
  nearDew: z.boolean(),
}) satisfies z.ZodType<CalendarAir>;

const shift = z.strictObject({
  fromMinute: minute,
  aheadMin: z.number(),
}) satisfies z.ZodType<ClockShift>;

export const calendarAnswerSchema = z
  .strictObject({
    revision: z.int(),
    state: z.enum(['ready', 'working', 'failed']),
    stale: z.boolean(),
    plan: plan.nullable(),
    firstDate: z.string().meta({ description: 'Minutes are counted from the beginning of this date.' }),
    timeZone: z.string(),
    nowMinute: minute,
    plannedFromMinute: minute,
    clockShifts: z.array(shift).meta({
      description: 'The clock on the wall shows a minute plus aheadMin of the last shift at or before it.',
    }),
    days: z.array(day),
    climate: z.array(air),
    names: z.strictObject({
      recipes: z.record(z.string(), z.string()),
      parts: z.record(z.string(), z.string()),
    }),
    coatLitres: z.record(z.string(), z.number().nullable()),
    neededBy: z.record(z.string(), minute),
    wayOutChanges: z.array(z.array(z.array(changeSchema))),
    problems: z.array(problemSchema),
    feedPath: z.string(),
  })
  .meta({ id: 'CalendarAnswer' }) satisfies z.ZodType<CalendarAnswer>;
