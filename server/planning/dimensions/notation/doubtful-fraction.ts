import { INCH_RULE_DENOMINATORS, MAX_FRACTION_DIGITS } from '../constants.ts';
import { quoted, type Refusal, refuse } from '../refusal.ts';
import { properOdd } from './fractions-without-bar.ts';

export interface WrittenFraction {
  /** Digits over and under the bar. */
  readonly over: string;
  readonly under: string;
  /** As in the text. */
  readonly text: string;
  /** One character or raised and lowered digits: cannot have lost a digit or swallowed a whole number. */
  readonly typeset: boolean;
}

const INCHES_IN_A_FOOT = 12;
/** Rough-sawn stock is named in quarters of an inch from 4/4 up to 16/4. Common practice, no source. */
const QUARTERS = 4;
const MOST_QUARTERS = 16;

/**
 * May this fraction be read as it stands, or must its writer be asked?
 *
 * `fraction`: as written. `mixed`: it follows a whole number. `marked`: a unit is written behind it. Result: null
 * when it can be read one way only, else the refusal that asks. No units. A rule of ours from notations found in
 * print: denominators cut off (`21 13/1`), a whole number glued on (`4263⁄64in`), door sizes in feet and inches
 * (`2/6`), rough-sawn stock in quarters (`5/4`).
 *
 * Example: 13/16 after a whole number passes; 13/1 is refused as cut off.
 */
export function doubtfulFraction(
  fraction: WrittenFraction,
  written: { readonly mixed: boolean; readonly marked: boolean },
): Refusal | null {
  const { over, under, typeset } = fraction;
  const top = Number(over);
  const bottom = Number(under);
  if (over.length > MAX_FRACTION_DIGITS || under.length > MAX_FRACTION_DIGITS || top < 1)
    return unreadable(fraction);
  if (typeset) return top < bottom ? null : unreadable(fraction);
  const onRule = INCH_RULE_DENOMINATORS.has(bottom);
  if (written.mixed)
    return bottom < 2 || top >= bottom || !(onRule || written.marked) ? cutOff(fraction) : null;

  if (bottom < 2 && (written.marked || over.length > 1)) return cutOff(fraction);
  if (top >= bottom && !written.marked && bottom === QUARTERS && top <= MOST_QUARTERS)
    return nominalQuarters(fraction);
  if (top >= bottom && over.length > 1) return glued(fraction);
  if (written.marked) return null;
  if (bottom < INCHES_IN_A_FOOT && (top >= bottom || !onRule || commonDivisor(top, bottom) > 1))
    return doorSize(fraction);
  return onRule && top < bottom ? null : cutOff(fraction);
}

function unreadable({ text }: WrittenFraction): Refusal {
  return refuse(
    'dimension-unreadable',
    `${quoted(text)} is not a fraction of an inch.`,
    'Write a fraction such as 5/8, or a decimal number.',
  );
}

function cutOff({ text }: WrittenFraction): Refusal {
  return refuse(
    'dimension-truncated',
    `The fraction ${quoted(text)} looks cut off.`,
    'Write the whole fraction with its inch mark, such as 13/16".',
  );
}

function glued({ text, over, under }: WrittenFraction): Refusal {
  const splits: string[] = [];
  for (let cut = 1; cut < over.length; cut++)
    if (properOdd(over.slice(cut), Number(under)))
      splits.push(`${over.slice(0, cut)} ${over.slice(cut)}/${under}"`);
  const decimal = `${Math.round((Number(over) / Number(under)) * 1e4) / 1e4}"`;
  return refuse(
    'dimension-ambiguous',
    `In ${quoted(text)} a whole number and a fraction seem to be glued together.`,
    `Put a space between them${splits.length > 0 ? `: ${splits.join(' or ')}` : ''}; or write ${decimal} if all of it is the fraction.`,
  );
}

function doorSize({ text, over, under }: WrittenFraction): Refusal {
  const top = Number(over);
  const bottom = Number(under);
  const divisor = commonDivisor(top, bottom);
  const inches = bottom > top ? `${top / divisor}/${bottom / divisor}"` : null;
  return refuse(
    'dimension-ambiguous',
    `${quoted(text)} can be a fraction of an inch or a door size of ${top} ft ${bottom} in.`,
    `Write ${inches === null ? '' : `${inches} or `}${top}' ${bottom}", whichever is meant.`,
  );
}

function nominalQuarters({ text, over }: WrittenFraction): Refusal {
  return refuse(
    'dimension-ambiguous',
    `${quoted(text)} is the name of rough-sawn stock, whose true thickness is less.`,
    `Type the thickness you measured, or ${Number(over) / QUARTERS}" if that is what is meant.`,
  );
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}
