import { quoted, type Refusal, refuse } from '../refusal.ts';
import { doubtfulFraction } from './doubtful-fraction.ts';
import { fractionsWithoutBar } from './fractions-without-bar.ts';
import { readDecimal } from './read-decimal.ts';
import type { Token } from './split-tokens.ts';

export interface Amount {
  readonly ok: true;
  readonly value: number;
  readonly whole: boolean;
  readonly hasFraction: boolean;
  readonly doubt: Refusal | null;
  readonly next: number;
}

/**
 * Which number do the tokens from `at` on say: a whole or decimal number, a fraction, or a whole number with a
 * fraction?
 *
 * `at`: index of a number or fraction. Result: the number with what its unit must decide, or a refusal. No units. A
 * rule of ours: a hyphen without spaces joins a whole number and its fraction; with spaces it is asked about.
 *
 * Example: 8, hyphen, 1/2 is 8.5.
 */
export function readAmount(tokens: readonly Token[], at: number): Amount | Refusal {
  const first = tokens[at] as Token;
  const second = tokens[at + 1];
  const third = tokens[at + 2];
  if (first.type === 'fraction') {
    const marked = second?.type === 'unit';
    const fault = doubtfulFraction(first, { mixed: false, marked });
    if (fault !== null && (marked || fault.code !== 'dimension-ambiguous')) return fault;
    const value = Number(first.over) / Number(first.under);
    return { ok: true, value, whole: false, hasFraction: true, doubt: fault, next: at + 1 };
  }
  const number = readDecimal(first.text);
  if (!number.ok) return number;
  const whole = /^\d+$/.test(first.text);

  const hyphen = second?.type === 'hyphen' ? second : null;
  const fraction = hyphen === null ? second : third;
  if (fraction?.type === 'fraction') {
    if (hyphen !== null && (hyphen.spaced || fraction.spaced)) return spacedHyphen(first, fraction);
    if (!whole)
      return refuse(
        'dimension-unreadable',
        `${quoted(`${first.text} ${fraction.text}`)} mixes a decimal number with a fraction.`,
        'Write the size with one of the two.',
      );
    const next = at + (hyphen === null ? 2 : 3);
    const marked = tokens[next]?.type === 'unit';
    const fault = doubtfulFraction(fraction, { mixed: true, marked });
    if (fault !== null) return fault;
    const value = number.value + Number(fraction.over) / Number(fraction.under);
    return { ok: true, value, whole: false, hasFraction: true, doubt: null, next };
  }
  if (hyphen !== null && third?.type === 'number') return spacedHyphen(first, third);
  if (second?.type === 'number') return twoNumbers(first.text, second.text);
  return { ok: true, value: number.value, whole, hasFraction: false, doubt: null, next: at + 1 };
}

/**
 * Can a size begin with this token? True for numbers and fractions. No units, no source.
 *
 * Example: `3` and `¾` can, `mm` cannot.
 */
export function isAmount(token: Token | undefined): boolean {
  return token?.type === 'number' || token?.type === 'fraction';
}

function spacedHyphen(first: Token, second: Token): Refusal {
  return refuse(
    'dimension-ambiguous',
    `The hyphen between ${quoted(first.text)} and ${quoted(second.text)} can be a range, a quantity or a minus.`,
    second.type === 'fraction'
      ? `Write ${first.text} ${second.text} for a mixed number, or start with = for a subtraction.`
      : 'Type one size; start with = for a subtraction.',
  );
}

function twoNumbers(first: string, second: string): Refusal {
  const fractions = fractionsWithoutBar(second);
  const wayOut =
    fractions.length > 0
      ? `Write ${fractions.map((fraction) => `${first} ${fraction}"`).join(' or ')} if a fraction bar was lost.`
      : /^\d{3}$/.test(second)
        ? `Write ${first}${second} without the space if it is one number.`
        : 'Type one size in the cell.';
  return refuse(
    'dimension-ambiguous',
    `${quoted(`${first} ${second}`)} holds two numbers with nothing between them.`,
    wayOut,
  );
}
