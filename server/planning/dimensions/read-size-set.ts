import type { UnitSystem } from '../project-input.ts';
import { type LengthUnit, MAX_TEXT, type SizeRole } from './constants.ts';
import { lengthInMm, PROJECT_UNIT } from './length-in-mm.ts';
import { type Measure, readMeasure } from './notation/read-measure.ts';
import { repeatedInBrackets } from './notation/repeated-in-brackets.ts';
import { splitTokens } from './notation/split-tokens.ts';
import { trailingWords } from './notation/trailing-words.ts';
import { quoted, type Refusal, refuse } from './refusal.ts';
import { fractionOfMm, nominal, tooLong } from './size-refusals.ts';

export interface SizeOfSet {
  readonly mm: number;
  /** The size alone, self-contained: `2800 mm`. */
  readonly normalised: string;
  /** What the text says the size is (`4' wide`); null when it does not say. */
  readonly role: SizeRole | null;
}

export type SizeSetReading =
  | { readonly ok: true; readonly sizes: readonly SizeOfSet[] }
  /** `index`: which size of the set is at fault, counted from 0. */
  | (Refusal & { readonly index: number });

type Written = Measure & { readonly role: SizeRole | null };

const UNIT_SUFFIX: Readonly<Record<LengthUnit, string>> = { mm: ' mm', cm: ' cm', m: ' m', in: '"', ft: "'" };
/** Two bare whole numbers up to this many, as in `4 x 8` or `2 x 4`, may be feet, inches or a lumber name. */
const LARGEST_NOMINAL = 12;

/**
 * Which lengths does a text of several sizes say, in its order?
 *
 * `text`: sizes joined by x, ×, * or "by". `units`: decides the unit of bare numbers. Result: mm in the order
 * written, or a refusal with the place of the size at fault. A unit on the last size alone holds for all
 * (`2800 x 1220 x 18.0mm`, `5x5'`); other mixtures of bare and marked sizes are read only where the one unit
 * written is the project's. Range as for one length. Source of the notations: magazines, plans, data sheets and
 * shop listings; "ask, never guess" is a rule of ours.
 *
 * Example: `2' x 4' x 1/2"` is 609.6, 1219.2 and 12.7 mm.
 */
export function readSizeSet(text: string, units: UnitSystem): SizeSetReading {
  if (text.length > MAX_TEXT) return { ...tooLong(text), index: 0 };
  const tidy = text.replace(/\s+/gu, ' ').trim();
  if (tidy === '')
    return {
      ...refuse('dimension-missing', 'The sizes are empty.', 'Type sizes such as 600 x 400 mm.'),
      index: 0,
    };
  const tokens = splitTokens(tidy);
  const written: Written[] = [];
  let at = 0;
  for (;;) {
    const measure = readMeasure(tokens, at);
    if (!measure.ok) return { ...measure, index: written.length };
    const words = trailingWords(tokens, measure.next);
    written.push({ ...measure, role: words.role });
    at = words.next;
    if (tokens[at]?.type !== 'times') break;
    at++;
  }
  const rest = tokens[at];
  const last = written.length - 1;
  if (rest?.type === 'word' && written[last]?.unit === null && last > 0)
    return { ...nominal(tidy), index: last };

  const unit = sharedUnit(written, PROJECT_UNIT[units], tidy);
  if (typeof unit !== 'string') return unit;
  const sizes: SizeOfSet[] = [];
  for (const [index, measure] of written.entries()) {
    const own = tidy.slice(measure.start, measure.end);
    if (measure.doubt !== null) return { ...measure.doubt, index };
    if (measure.unit === null && measure.hasFraction && unit === 'mm') return { ...fractionOfMm(own), index };
    const length = lengthInMm(measure, unit, own, false);
    if (!length.ok) return { ...length, index };
    const normalised = measure.unit === null ? `${own}${UNIT_SUFFIX[unit]}` : own;
    sizes.push({ mm: length.mm, normalised, role: measure.role });
  }
  if (rest !== undefined) {
    const repeated = repeatedInBrackets(
      tidy,
      rest,
      sizes.map(({ mm }) => mm),
      readSizeSet,
    );
    if (repeated !== null) return { ...repeated, index: last };
  }
  return { ok: true, sizes };
}

/** The unit of the bare sizes, or a refusal where they could be in more than one. */
function sharedUnit(
  written: readonly Written[],
  project: LengthUnit,
  text: string,
): LengthUnit | (Refusal & { readonly index: number }) {
  const bare = written.flatMap(({ unit }, index) => (unit === null ? [index] : []));
  const [first] = bare;
  if (first === undefined) return project;
  const last = written.length - 1;
  const lastUnit = written[last]?.unit ?? null;
  if (lastUnit !== null && bare.length === last) return lastUnit;
  const others = written.flatMap(({ unit }) => (unit === null ? [] : [unit]));
  if (others.some((unit) => unit !== project))
    return {
      ...refuse(
        'dimension-ambiguous',
        `${quoted(text)} gives a unit for some of its sizes only.`,
        'Write the unit after each size.',
      ),
      index: first,
    };
  const small = written.every(({ value }) => Number.isInteger(value) && value <= LARGEST_NOMINAL);
  if (others.length === 0 && small && written.length === 2 && project === 'in')
    return {
      ...refuse(
        'dimension-ambiguous',
        `${quoted(text)} can be feet, inches or a nominal lumber name.`,
        'Write the unit after the sizes, such as 4 x 8 ft; for lumber, type the measured size.',
      ),
      index: 0,
    };
  return project;
}
