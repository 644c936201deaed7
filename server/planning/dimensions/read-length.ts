import type { UnitSystem } from '../project-input.ts';
import { type LengthUnit, MAX_TEXT, NOMINAL_WORDS } from './constants.ts';
import { lengthInMm, PROJECT_UNIT } from './length-in-mm.ts';
import { type Measure, readMeasure } from './notation/read-measure.ts';
import { repeatedInBrackets } from './notation/repeated-in-brackets.ts';
import { splitTokens } from './notation/split-tokens.ts';
import { trailingWords } from './notation/trailing-words.ts';
import { readSizeSet } from './read-size-set.ts';
import { type Refusal, refuse } from './refusal.ts';
import { fractionOfMm, nominal, severalSizes, tooLong } from './size-refusals.ts';

export type LengthReading =
  /** `normalised`: the text made self-contained, so that it reads the same in a project of either unit system. */
  { readonly ok: true; readonly mm: number; readonly normalised: string } | Refusal;

/**
 * What length does a typed cell say?
 *
 * `text`: as typed. `units`: decides the unit of a bare number, mm or inch. `allowZero`: for radii and gaps. Result:
 * mm, with the text made self-contained (`600` becomes `600 mm`; `23 5/8` in an inch project becomes `23 5/8"`), or
 * a refusal with its code and a way out. Range: above 0 (or from 0) to 100 m, at most 200 characters. Source of the
 * notations: woodworking magazines, plans and data sheets; "ask, never guess" is a rule of ours.
 *
 * Example: `4’3-1/2”` is 51.5 in = 1308.1 mm.
 */
export function readLength(
  text: string,
  units: UnitSystem,
  { allowZero = false }: { readonly allowZero?: boolean } = {},
): LengthReading {
  if (text.length > MAX_TEXT) return tooLong(text);
  const tidy = text.replace(/\s+/gu, ' ').trim();
  if (tidy === '') return refuse('dimension-missing', 'The size is empty.', 'Type a size, such as 600 mm.');
  const tokens = splitTokens(tidy);
  const measure = readMeasure(tokens, 0);
  if (!measure.ok) return measure;

  const rest = tokens[trailingWords(tokens, measure.next).next];
  if (rest?.type === 'times') return severalSizes(tidy);
  if (measure.doubt !== null) return measure.doubt;
  if (rest?.type === 'word' && NOMINAL_WORDS.has(rest.text.toLowerCase())) return nominal(tidy);
  const unit = PROJECT_UNIT[units];
  if (measure.unit === null && measure.hasFraction && unit === 'mm')
    return fractionOfMm(tidy.slice(measure.start, measure.end));
  const length = lengthInMm(measure, unit, tidy, allowZero);
  if (!length.ok) return length;
  if (rest !== undefined) {
    const repeated = repeatedInBrackets(tidy, rest, [length.mm], readSizeSet);
    if (repeated !== null) return repeated;
  }
  return { ok: true, mm: length.mm, normalised: withUnit(tidy, measure, unit) };
}

function withUnit(text: string, measure: Measure, unit: LengthUnit): string {
  if (measure.unit !== null) return text;
  const rest = text.slice(measure.end);
  // A word that follows must not run into the unit: `600wide` becomes `600 mm wide`.
  const gap = /^\p{L}/u.test(rest) ? ' ' : '';
  return `${text.slice(0, measure.end)}${unit === 'in' ? '"' : ` ${unit}`}${gap}${rest}`;
}
