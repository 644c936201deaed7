import { z } from 'zod';
import type { AirVerdict } from '../planning/air/air-check-result.ts';
import type { AirAnswer } from './contract.ts';
import { oneOf } from './one-of.ts';
import { problemSchema } from './plan-schemas.ts';

/** What the air check looks like in an answer; checked against the contract by the compiler. */

const figure = z.number().nullable();
const minuteOrNull = z.number().nullable();
const verdict = oneOf<AirVerdict>({
  'over-ceiling': true,
  'over-target': true,
  'over-health': true,
  'cannot-tell': true,
  'within-limits-entered': true,
});

const day = z.strictObject({
  id: z.string().meta({ description: 'The date.' }),
  fromMinute: z.number(),
  toMinute: z.number(),
  peakIndex: figure,
  peakPercent: figure,
  over: z
    .array(z.strictObject({ fromMinute: z.number(), toMinute: z.number() }))
    .meta({ description: 'When the vapour is not under the health limit.' }),
  points: z.array(
    z.strictObject({
      minute: z.number(),
      mgPerM3: z.number(),
      index: z
        .number()
        .meta({ description: 'Concentrations over their exposure limits, added up; 1 is the limit.' }),
      percent: z.number().meta({ description: 'Of the lower explosive limit.' }),
    }),
  ),
  healthComplete: z.boolean(),
  fireBasis: z.enum(['complete', 'cautious', 'part']),
});

const substance = z.strictObject({
  id: z.string(),
  name: z.string(),
  limitMgPerM3: figure,
  limitSource: z.string(),
  lelPercent: figure,
  lelSource: z.string(),
  cautiousLelPercent: figure,
  cautiousSource: z.string(),
  flashPointC: figure,
  dilutionM3PerL: figure,
});

const suggestion = z.strictObject({
  id: z.enum(['open-door', 'more-air', 'water-based', 'smaller-batches', 'more-time']),
  text: z.string(),
  peakIndex: figure,
  peakPercent: figure,
  cautiousFire: z.boolean(),
});

const air = z
  .strictObject({
    verdict: z.union([verdict, z.literal('no-coats')]),
    headline: z.string(),
    sentences: z.array(z.string()),
    volumeM3: figure,
    airflow: figure.meta({ description: 'Fresh air there is, m3/h; null is not known.' }),
    airChangesPerHour: figure,
    needed: figure.meta({ description: 'Fresh air needed, m3/h; null where it cannot be told.' }),
    fire: z.strictObject({
      verdict,
      peakPercent: figure,
      peakMinute: minuteOrNull,
      needed: figure,
      cautious: z
        .strictObject({ peakPercent: figure, needed: figure, assumed: z.array(z.string()) })
        .nullable(),
    }),
    health: z.strictObject({
      verdict,
      peakIndex: figure,
      peakMinute: minuteOrNull,
      eightHourIndex: figure,
      shortTermIndex: figure,
      ceilingIndex: figure,
      needed: figure,
      steadyState: figure,
      airOut: figure,
      neverAirsOut: z.boolean(),
    }),
    heatW: figure,
    heatKwh: figure,
    heatCost: figure,
    coats: z.array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        startMinute: z.number(),
        litres: figure,
        vapourG: figure,
        peakIndex: figure,
      }),
    ),
    days: z.array(day),
    substances: z.array(substance),
    suggestions: z.array(suggestion),
    indoors: z.strictObject({
      earliestMinute: minuteOrNull,
      latestMinute: minuteOrNull,
      earliestWait: figure,
      latestWait: figure,
      advice: z.array(z.strictObject({ what: z.string(), says: z.string(), source: z.string() })),
      missing: z.array(z.string()),
    }),
    notes: z.array(z.string()),
    cautions: z.array(z.string()).meta({ description: 'Shown beside every verdict.' }),
    problems: z.array(problemSchema),
  })
  .meta({ id: 'AirPlan' });

export const airAnswerSchema = z
  .strictObject({
    revision: z.int(),
    state: z.enum(['ready', 'working', 'failed']).meta({ description: 'Of the calendar it rests on.' }),
    stale: z.boolean(),
    firstDate: z.string().meta({ description: 'Minutes are counted from the beginning of this date.' }),
    timeZone: z.string(),
    clockShifts: z.array(z.strictObject({ fromMinute: z.number(), aheadMin: z.number() })),
    air,
  })
  .meta({ id: 'AirAnswer' }) satisfies z.ZodType<AirAnswer>;
