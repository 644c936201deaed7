import { z } from 'zod';
import { isDate } from '../../planning/calendar/is-date.ts';

/** The values that rows of a project document are made of, with the same limits as the web forms. */

/** Longest text of one cell, characters. */
const LONGEST_CELL = 10_000;
const LONGEST_ID = 100;
/** Largest count or amount; far above any shop's, far below where sums lose whole numbers. */
const LARGEST_AMOUNT = 1_000_000;
/** Ten thousand million in a currency of cents. */
const LARGEST_MONEY = 1_000_000_000_000;
/** Largest length given as a number, mm: 100 m, the limit that typed lengths have. */
const LARGEST_LENGTH_MM = 100_000;

export const cell = z.string().max(LONGEST_CELL);

/** A size as typed, or a number in the project's unit. Whether it can be read is planning's question. */
export const measure = z.union([cell, z.number()]).meta({
  description: 'Text as typed ("23 5/8", "=depth - 3/4\\""), or a number in mm (metric) or inches (us).',
});

/** A row's id. Without dots and slashes, which join the parts of a figure's path. */
export const rowId = z
  .union([
    z
      .string()
      .max(LONGEST_ID)
      .regex(/^[\p{L}\p{N}_-]+$/u, 'must be letters, digits, hyphens and underscores'),
    z.int().positive(),
  ])
  .meta({ description: 'Left out: the 1-based position of the row.' });

/** The id of another row, or empty for none. */
export const reference = z.union([cell, z.int().positive()]);

/** A day that exists, or none; the same that a form takes. */
export const day = cell
  .refine((text) => text === '' || isDate(text), 'must be a date like 2027-04-01, or empty')
  .meta({ description: 'YYYY-MM-DD, or empty.' });

export const amount = z.number().min(0).max(LARGEST_AMOUNT);
export const money = z.int().min(0).max(LARGEST_MONEY);
export const sizeMm = z.number().positive().max(LARGEST_LENGTH_MM);

export const currency = z
  .string()
  .regex(/^[A-Z]{3}$/, 'must be a currency code of three capital letters, such as EUR');

/** One of the texts of a union type; a text that the type does not have does not compile. */
export function choice<Text extends string>(...texts: readonly [Text, ...Text[]]) {
  return z.enum(texts as unknown as [Text, ...Text[]]);
}
