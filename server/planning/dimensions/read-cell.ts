import type { Working, WorkingInput } from '../figure.ts';
import type { NamedSize, UnitSystem } from '../project-input.ts';
import { MM_PER_UNIT } from './constants.ts';
import { type Dimensioned, dimensionName } from './dimensioned.ts';
import { evaluateExpression } from './evaluate-expression.ts';
import { lengthInMm, PROJECT_UNIT } from './length-in-mm.ts';
import { nameKey } from './name-key.ts';
import { parseExpression } from './parse-expression.ts';
import { readLength } from './read-length.ts';
import { readQuantity } from './read-quantity.ts';
import { quoted, type Refusal, refuse } from './refusal.ts';

export interface CellScope {
  readonly units: UnitSystem;
  /** Values of the named sizes that have one, mm, under their `nameKey`. */
  readonly values: ReadonlyMap<string, number>;
  /** Every named size of the project under its `nameKey`, with or without a value. */
  readonly named: ReadonlyMap<string, NamedSize>;
}

export interface CellReading {
  /** Null when the cell cannot be read, or waits for a size that has no value. */
  readonly value: number | null;
  readonly working: Working;
  /** The cell's own fault; null when it is sound, even if it waits for another. */
  readonly refusal: Refusal | null;
}

/**
 * What length does a cell come to, typed plainly or as a calculation after "="?
 *
 * `text`: as typed. `scope`: unit and named sizes of the project. Result: mm with its working, or null with the
 * cell's own fault. A cell that uses a named size without a value is null without a fault of its own, since that
 * size has one. Range as for `readLength`. No source: a definition.
 *
 * Example: `=seat_depth - 2*ply` with 450 mm and 18 mm is 414 mm.
 */
export function readLengthCell(text: string, scope: CellScope, allowZero = false): CellReading {
  if (!isExpression(text)) {
    const reading = readLength(text, scope.units, { allowZero });
    return plainCell(text, reading.ok ? reading.mm : reading);
  }
  return expressionCell(text, scope, (result) => {
    const { power, bare } = result;
    if (power !== 1 && !bare)
      return refuse(
        'expression-invalid',
        `${quoted(text)} comes to ${dimensionName(power)}, not a length.`,
        'A length is a size, a size times a number, or a sum of sizes.',
      );
    const unit = power === 1 ? 'mm' : PROJECT_UNIT[scope.units];
    const length = lengthInMm({ value: result.value, unit }, unit, text, allowZero);
    return length.ok ? length.mm : length;
  });
}

/**
 * How many pieces does a cell come to, typed plainly or as a calculation after "="?
 *
 * `text`: as typed. Result: pieces, a whole number from 1 to 100 000, with its working; else null as for lengths.
 * No source: a definition.
 *
 * Example: `=2*3` is 6.
 */
export function readQuantityCell(text: string, scope: CellScope): CellReading {
  if (!isExpression(text)) {
    const reading = readQuantity(text);
    return plainCell(text, reading.ok ? reading.quantity : reading);
  }
  return expressionCell(text, scope, ({ value, power }) => {
    if (power !== 0)
      return refuse(
        'quantity-unreadable',
        `${quoted(text)} comes to ${dimensionName(power)}, not a number of pieces.`,
        'Divide a length by a length, or type a whole number.',
      );
    // A quotient of two sizes carries the rounding of both; a billionth of a piece is none.
    const nearest = Math.round(value);
    const reading = readQuantity(String(Math.abs(value - nearest) < 1e-9 ? nearest : value));
    return reading.ok ? reading.quantity : reading;
  });
}

function isExpression(text: string): boolean {
  return /^\s*=/u.test(text);
}

function plainCell(text: string, result: number | Refusal): CellReading {
  const inputs: readonly WorkingInput[] = [{ name: 'typed', value: quoted(text), unit: '' }];
  return typeof result === 'number'
    ? { value: result, working: { rule: 'as typed', inputs }, refusal: null }
    : { value: null, working: { rule: 'as typed', inputs, notes: [result.message] }, refusal: result };
}

function expressionCell(
  text: string,
  scope: CellScope,
  settle: (result: Dimensioned) => number | Refusal,
): CellReading {
  const parsed = parseExpression(text);
  if (!parsed.ok) return plainCell(text, parsed);
  const inputs: WorkingInput[] = [];
  const waitsFor: string[] = [];
  for (const name of parsed.names) {
    const row = scope.named.get(nameKey(name));
    const value = scope.values.get(nameKey(name)) ?? null;
    if (row === undefined) continue;
    inputs.push({ name: row.name, value, unit: 'mm', from: `sizes/${row.id}/valueMm` });
    if (value === null) waitsFor.push(row.name);
  }
  const unit = scope.units === 'us' ? 'inch' : 'mm';
  const rule = text.trim();
  const notes = [
    `A number without a unit that meets a length is in ${unit} (${MM_PER_UNIT[PROJECT_UNIT[scope.units]]} mm).`,
  ];
  if (waitsFor.length > 0)
    return {
      value: null,
      working: { rule, inputs, notes: [`Waits for ${waitsFor.join(', ')}, which has no value.`] },
      refusal: null,
    };
  const result = evaluateExpression(parsed.tree, scope);
  const settled = result.ok ? settle(result) : result;
  return typeof settled === 'number'
    ? { value: settled, working: { rule, inputs, notes }, refusal: null }
    : { value: null, working: { rule, inputs, notes: [settled.message] }, refusal: settled };
}
