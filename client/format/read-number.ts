import { type Reading, refused, understood } from './reading.ts';

export interface NumberRange {
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

/**
 * What number is typed? Point or comma marks decimals. Digits with a comma before exactly three more ("1,220") could
 * mean two things and are refused. `range`: both ends belong to it.
 */
export function readNumber(typed: string, range: NumberRange = {}): Reading<number> {
  const text = typed.trim().replaceAll(/[\u00a0\u202f]/g, '');
  if (/^\d{1,3}(,\d{3})+$/.test(text))
    return refused(
      `"${typed.trim()}" could be a whole number or a decimal one. Leave the comma out, or write a point.`,
    );
  if (!/^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(text))
    return refused(`"${typed.trim()}" is not a number. Write digits, such as 2 or 1.5.`);
  return within(Number(text.replace(',', '.')), range);
}

/** The same where nothing typed means "not known", or "as the catalogue says". */
export function readOptionalNumber(typed: string, range: NumberRange = {}): Reading<number | null> {
  return typed.trim() === '' ? understood(null) : readNumber(typed, range);
}

/** Refuses a number outside its range or not whole, and says which range it is. */
export function within(value: number, { least, most, whole }: NumberRange): Reading<number> {
  if (whole === true && !Number.isInteger(value)) return refused(`${value} must be a whole number.`);
  if (least !== undefined && !(value >= least))
    return refused(`${value} is less than ${least}, the least allowed.`);
  if (most !== undefined && !(value <= most))
    return refused(`${value} is more than ${most}, the most allowed.`);
  return understood(value);
}
