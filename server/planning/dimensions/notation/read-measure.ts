import { type LengthUnit, MM_PER_UNIT } from '../constants.ts';
import { quoted, type Refusal, refuse } from '../refusal.ts';
import { fractionsWithoutBar } from './fractions-without-bar.ts';
import { isAmount, readAmount } from './read-amount.ts';
import type { Token } from './split-tokens.ts';

/** One size as written, before the project's unit is given to it. */
export interface Measure {
  readonly ok: true;
  readonly value: number;
  /** Null when no unit is written. Feet and inches together come as inches. */
  readonly unit: LengthUnit | null;
  readonly hasFraction: boolean;
  /** Why it must not be read while it has no unit of its own. */
  readonly doubt: Refusal | null;
  /** Places in the text: first character, and where a unit would be added. */
  readonly start: number;
  readonly end: number;
  /** Index of the first token that is not part of the size. */
  readonly next: number;
}

const INCHES_PER_FOOT = MM_PER_UNIT.ft / MM_PER_UNIT.in;

/**
 * Which size do the tokens from `from` on say?
 *
 * Result: value and unit as written (`8-1/2”` is 8.5 in, `4’3-1/2”` is 51.5 in), or a refusal where the text can be
 * read two ways. A hyphen joining a whole number and a fraction makes a mixed number, never a minus. Source of the
 * notations: woodworking magazines, plans and data sheets; the rule "ask, never guess" is ours.
 *
 * Example: number 23, fraction 5/8, inch mark is 23.625 in.
 */
export function readMeasure(tokens: readonly Token[], from: number): Measure | Refusal {
  let at = from;
  while (tokens[at]?.type === 'about') at++;
  const first = tokens[at];
  if (first?.type === 'hyphen' && isAmount(tokens[at + 1])) return negative(tokens, at);
  if (first === undefined || !isAmount(first)) return noNumber(tokens, at);

  const amount = readAmount(tokens, at);
  if (!amount.ok) return amount;
  const unit = tokens[amount.next];
  const measure = (value: number, own: LengthUnit | null, last: number, next: number): Measure => ({
    ok: true,
    value,
    unit: own,
    hasFraction: amount.hasFraction,
    doubt: own === null ? amount.doubt : null,
    start: first.start,
    end: tokens[last]?.end ?? 0,
    next,
  });
  if (unit?.type !== 'unit') return measure(amount.value, null, amount.next - 1, amount.next);

  const lostBars = unit.mark && unit.spaced && at + 1 === amount.next ? fractionsWithoutBar(first.text) : [];
  if (unit.unit === 'in' && lostBars.length > 0) return lostBar(first.text, lostBars);

  const hyphen = tokens[amount.next + 1]?.type === 'hyphen' ? 1 : 0;
  const inchesAt = amount.next + 1 + hyphen;
  if (unit.unit !== 'ft' || !isAmount(tokens[inchesAt]))
    return measure(amount.value, unit.unit, amount.next, amount.next + 1);

  const inches = readAmount(tokens, inchesAt);
  if (!inches.ok) return inches;
  const after = tokens[inches.next];
  const span = [first, tokens[inches.next - 1]] as const;
  if (!amount.whole || inches.value >= INCHES_PER_FOOT || (after?.type === 'unit' && after.unit !== 'in'))
    return oddFeet(span[0].text, span[1]?.text ?? '');
  const closed = after?.type === 'unit' ? 1 : 0;
  return measure(
    amount.value * INCHES_PER_FOOT + inches.value,
    'in',
    inches.next - 1 + closed,
    inches.next + closed,
  );
}

function negative(tokens: readonly Token[], at: number): Refusal {
  return refuse(
    'dimension-not-positive',
    `${quoted(`-${tokens[at + 1]?.text ?? ''}`)} is below zero.`,
    'Type a size above zero.',
  );
}

function noNumber(tokens: readonly Token[], at: number): Refusal {
  const found = tokens[at]?.text;
  return refuse(
    'dimension-unreadable',
    found === undefined ? 'A number is missing.' : `${quoted(found)} stands where a number is expected.`,
    'Type a size such as 600 mm, 23 5/8" or 2\' 6"; start with = for a calculation.',
  );
}

function lostBar(digits: string, candidates: readonly string[]): Refusal {
  return refuse(
    'dimension-ambiguous',
    `${quoted(`${digits} "`)} may have lost its fraction bar.`,
    `Write ${candidates.map((fraction) => `${fraction}"`).join(' or ')}, or ${digits}" without the space if whole inches are meant.`,
  );
}

function oddFeet(first: string, last: string): Refusal {
  return refuse(
    'dimension-ambiguous',
    `${quoted(`${first} ft … ${last}`)} is not a whole number of feet with fewer than 12 inches.`,
    'Write feet and inches such as 6\' 7 1/2", or all of it in inches.',
  );
}
