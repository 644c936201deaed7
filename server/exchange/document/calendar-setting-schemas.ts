import { z } from 'zod';
import { isDate } from '../../planning/calendar/is-date.ts';
import type { ProjectSettings } from '../../planning/project-input.ts';
import { isTimeZone } from '../is-time-zone.ts';
import { choice } from './value-schemas.ts';

/** Settings of the coat calendar, each as it may be given, in a document and over HTTP. */

const humidity = z.number().min(1).max(100);
const temperature = z.number().min(-50).max(60);
/** Larger than any shop, m2. */
const area = z.number().positive().max(100_000).nullable();

export const calendarSettingShapes = {
  startDate: z
    .string()
    .max(10)
    .refine((text) => text === '' || isDate(text), 'must be a date as 2027-03-14, or empty for today')
    .meta({ description: 'First day of finishing, YYYY-MM-DD; empty for today.' }),
  timeZone: z
    .string()
    .max(100)
    .refine(isTimeZone, 'must be the name of a time zone, such as Europe/Berlin')
    .meta({ description: 'IANA name of the time zone.' }),
  hands: z.int().min(1).max(20),
  rackM2: area,
  largestBatchM2: area,
  sandsApart: z.boolean(),
  woodWarmerC: z.number().min(-60).max(60),
  dryingDoublesPerC: z.number().min(1).max(1000),
  dryingUsesHumidity: z.boolean(),
  climateKind: choice<ProjectSettings['climateKind']>('constant', 'day-night', 'hourly'),
  dayC: temperature,
  nightC: temperature,
  dayHumidity: humidity,
  nightHumidity: humidity,
  keepUnderHealthLimit: z.boolean(),
};
