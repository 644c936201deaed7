import type { UnitSystem } from '../project-input.ts';
import { type LengthUnit, MAX_LENGTH_MM, MM_PER_UNIT } from './constants.ts';
import type { Measure } from './notation/read-measure.ts';
import { quoted, type Refusal, refuse } from './refusal.ts';

/** The unit a bare number is in. */
export const PROJECT_UNIT: Readonly<Record<UnitSystem, LengthUnit>> = { metric: 'mm', us: 'in' };

/**
 * How many millimetres is this size, once a unit is settled, and is that a size a part can have?
 *
 * `measure`: as written. `unit`: the unit to use where none is written. `text`: for the message. Result: mm above 0
 * (or from 0 where `allowZero`), at most 100 m; else a refusal. Source of the conversions: 1 in = 25.4 mm, exact.
 *
 * Example: 23.625 in is 600.075 mm.
 */
export function lengthInMm(
  measure: Pick<Measure, 'value' | 'unit'>,
  unit: LengthUnit,
  text: string,
  allowZero: boolean,
): { readonly ok: true; readonly mm: number } | Refusal {
  const mm = roundOffStorage(measure.value * MM_PER_UNIT[measure.unit ?? unit]);
  if (mm < 0 || (mm === 0 && !allowZero))
    return refuse(
      'dimension-not-positive',
      `${quoted(text)} is ${mm === 0 ? 'zero' : 'below zero'}.`,
      allowZero ? 'Type a size of zero or more.' : 'Type a size above zero.',
    );
  if (!(mm <= MAX_LENGTH_MM))
    return refuse(
      'dimension-too-large',
      `${quoted(text)} is longer than ${MAX_LENGTH_MM / MM_PER_UNIT.m} m.`,
      'Check the unit; a size can be at most 100 m.',
    );
  return { ok: true, mm };
}

/** Removes what binary storage adds to a decimal product (0.6 m x 1000), far below any size: to a picometre. */
function roundOffStorage(mm: number): number {
  return mm < MAX_LENGTH_MM ? Math.round(mm * 1e9) / 1e9 : mm;
}
