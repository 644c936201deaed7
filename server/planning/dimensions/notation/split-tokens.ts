import {
  ABOUT_SIGNS,
  ABOUT_WORDS,
  FOOT_MARKS,
  FRACTION_BARS,
  HYPHENS,
  INCH_MARKS,
  type LengthUnit,
  SUBSCRIPT_DIGITS,
  SUPERSCRIPT_DIGITS,
  TIMES_SIGNS,
  UNIT_WORDS,
  VULGAR_FRACTIONS,
} from '../constants.ts';

/** Where a token stands in the text, and whether white space comes before it. */
interface Place {
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly spaced: boolean;
}

export type Token = Place &
  (
    | { readonly type: 'number' | 'hyphen' | 'times' | 'about' | 'open' | 'close' | 'word' | 'other' }
    /** `typeset`: one character, or raised and lowered digits, so that a whole number before it cannot be glued on. */
    | { readonly type: 'fraction'; readonly over: string; readonly under: string; readonly typeset: boolean }
    /** `mark`: written as a prime or quote, not as a word. */
    | { readonly type: 'unit'; readonly unit: LengthUnit; readonly mark: boolean }
  );

type Kind = Token extends infer One ? (One extends Token ? Omit<One, keyof Place> : never) : never;

const inside = (characters: string): string => `[${characters.replace(/[\\\]^-]/g, '\\$&')}]`;

const RULES: readonly (readonly [RegExp, (text: string) => Kind])[] = [
  [
    new RegExp(`(\\d+)${inside(FRACTION_BARS)}(\\d+)`, 'uy'),
    (text) => fraction(text.split(new RegExp(inside(FRACTION_BARS), 'u')), false),
  ],
  [
    new RegExp(
      `${inside(SUPERSCRIPT_DIGITS)}+${inside(FRACTION_BARS)}(?:${inside(SUBSCRIPT_DIGITS)}+|\\d+)`,
      'uy',
    ),
    (text) => fraction(text.split(new RegExp(inside(FRACTION_BARS), 'u')).map(plainDigits), true),
  ],
  [
    new RegExp(`[${[...VULGAR_FRACTIONS.keys()].join('')}]`, 'uy'),
    (text) => fraction((VULGAR_FRACTIONS.get(text) ?? []).map(String), true),
  ],
  [/(?:\d+(?:[.,]\d+)*|[.,]\d+)/uy, () => ({ type: 'number' })],
  [new RegExp(`${inside(FOOT_MARKS)}{2}`, 'uy'), () => ({ type: 'unit', unit: 'in', mark: true })],
  [new RegExp(inside(FOOT_MARKS), 'uy'), () => ({ type: 'unit', unit: 'ft', mark: true })],
  [new RegExp(inside(INCH_MARKS), 'uy'), () => ({ type: 'unit', unit: 'in', mark: true })],
  [new RegExp(inside(HYPHENS), 'uy'), () => ({ type: 'hyphen' })],
  [new RegExp(inside(TIMES_SIGNS), 'uy'), () => ({ type: 'times' })],
  [new RegExp(inside(ABOUT_SIGNS), 'uy'), () => ({ type: 'about' })],
  [/[([]/uy, () => ({ type: 'open' })],
  [/[)\]]/uy, () => ({ type: 'close' })],
  // A unit run into the x that follows it, as in 22mmx1.0mm.
  [
    /(?:mm|cm|m|in|ft)(?=x\s*[\d.,])/iuy,
    (text) => ({ type: 'unit', unit: UNIT_WORDS.get(text.toLowerCase()) ?? 'mm', mark: false }),
  ],
  [/\p{L}+\.?(?!\d)|\p{L}+/uy, word],
];

/**
 * Which numbers, fractions, units and signs does a typed size consist of, in order?
 *
 * `text`: as typed. Result: tokens with their places; what is not known comes back as `word` or `other`, never lost.
 * No units, no source.
 *
 * Example: `4’3-1/2”` is number 4, foot mark, number 3, hyphen, fraction 1/2, inch mark.
 */
export function splitTokens(text: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  let spaced = false;
  while (at < text.length) {
    const space = match(/\s+/uy, text, at);
    if (space !== null) {
      at += space.length;
      spaced = true;
      continue;
    }
    const [found, kind] = firstRule(text, at);
    tokens.push({ ...kind, text: found, start: at, end: at + found.length, spaced } as Token);
    at += found.length;
    spaced = false;
  }
  return tokens;
}

function firstRule(text: string, at: number): readonly [string, Kind] {
  for (const [pattern, kindOf] of RULES) {
    const found = match(pattern, text, at);
    if (found !== null) return [found, kindOf(found)];
  }
  return [String.fromCodePoint(text.codePointAt(at) ?? 0), { type: 'other' }];
}

function match(pattern: RegExp, text: string, at: number): string | null {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0] ?? null;
}

function fraction([over = '', under = '']: readonly string[], typeset: boolean): Kind {
  return { type: 'fraction', over, under, typeset };
}

function plainDigits(text: string): string {
  return [...text]
    .map((digit) => {
      const value = Math.max(SUPERSCRIPT_DIGITS.indexOf(digit), SUBSCRIPT_DIGITS.indexOf(digit));
      return value < 0 ? digit : String(value);
    })
    .join('');
}

function word(text: string): Kind {
  const bare = text.toLowerCase().replace(/\.$/, '');
  const unit = UNIT_WORDS.get(bare);
  if (unit !== undefined) return { type: 'unit', unit, mark: false };
  if (bare === 'x' || bare === 'by' || bare === 'and') return { type: 'times' };
  if (ABOUT_WORDS.has(bare)) return { type: 'about' };
  return { type: 'word' };
}
