import { MM_PER_FOOT, MM_PER_INCH } from '../display/constants.ts';

/** Units of length that may be written, and their millimetres. Exact by definition. */
export const MM_PER_UNIT = { mm: 1, cm: 10, m: 1000, in: MM_PER_INCH, ft: MM_PER_FOOT } as const;
export type LengthUnit = keyof typeof MM_PER_UNIT;

/** Spellings of the units, lower case. */
export const UNIT_WORDS: ReadonlyMap<string, LengthUnit> = new Map([
  ...['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'].map((word) => [word, 'mm'] as const),
  ...['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'].map((word) => [word, 'cm'] as const),
  ...['m', 'metre', 'metres', 'meter', 'meters'].map((word) => [word, 'm'] as const),
  ...['in', 'ins', 'inch', 'inches'].map((word) => [word, 'in'] as const),
  ...['ft', 'foot', 'feet'].map((word) => [word, 'ft'] as const),
]);

/** Characters that stand for the foot mark (twice: inch mark) and for the inch mark. */
export const FOOT_MARKS = "'’‘′´ʹʼ＇`";
export const INCH_MARKS = '"”“„″˝＂';

/** Characters that join a whole number and its fraction, or stand for a minus. */
export const HYPHENS = '-‐‑‒–—−';

/** Characters that stand for the bar of a fraction. */
export const FRACTION_BARS = '/⁄∕／';

export const TIMES_SIGNS = '×*✕⨯';

/** Fractions that are one character: numerator and denominator. */
export const VULGAR_FRACTIONS: ReadonlyMap<string, readonly [number, number]> = new Map([
  ['½', [1, 2]],
  ['⅓', [1, 3]],
  ['⅔', [2, 3]],
  ['¼', [1, 4]],
  ['¾', [3, 4]],
  ['⅕', [1, 5]],
  ['⅖', [2, 5]],
  ['⅗', [3, 5]],
  ['⅘', [4, 5]],
  ['⅙', [1, 6]],
  ['⅚', [5, 6]],
  ['⅐', [1, 7]],
  ['⅛', [1, 8]],
  ['⅜', [3, 8]],
  ['⅝', [5, 8]],
  ['⅞', [7, 8]],
  ['⅑', [1, 9]],
  ['⅒', [1, 10]],
]);

export const SUPERSCRIPT_DIGITS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
export const SUBSCRIPT_DIGITS = '₀₁₂₃₄₅₆₇₈₉';

/** Words that say a size is rounded; it is read as written. */
export const ABOUT_WORDS: ReadonlySet<string> = new Set(['ca', 'circa', 'approx', 'approximately', 'about']);
export const ABOUT_SIGNS = '~≈∼';

export type SizeRole = 'length' | 'width' | 'height' | 'thickness';

/** Words after a size that say which one it is. */
export const ROLE_WORDS: ReadonlyMap<string, SizeRole> = new Map([
  ['long', 'length'],
  ['length', 'length'],
  ['wide', 'width'],
  ['width', 'width'],
  ['deep', 'width'],
  ['depth', 'width'],
  ['high', 'height'],
  ['height', 'height'],
  ['tall', 'height'],
  ['thick', 'thickness'],
  ['thickness', 'thickness'],
]);

/** Words after a size that name the material and change nothing. */
export const MATERIAL_WORDS: ReadonlySet<string> = new Set(['ply', 'plywood']);

/** Words after `5/4` and the like that make it a nominal thickness. */
export const NOMINAL_WORDS: ReadonlySet<string> = new Set(['stock', 'lumber', 'board', 'boards', 'timber']);

/** Longest text read as a plain size, characters. Our limit: every notation seen in print is under 60. */
export const MAX_TEXT = 200;

/** Longest expression, characters. Our limit; it also bounds how deep brackets can nest. */
export const MAX_EXPRESSION = 500;

/** Longest length accepted, mm (100 m). Our limit: the longest rolls sold are 100 m. */
export const MAX_LENGTH_MM = 100_000;

/** Largest quantity accepted, pieces. Our limit. */
export const MAX_QUANTITY = 100_000;

/** Most digits in a numerator or denominator. */
export const MAX_FRACTION_DIGITS = 4;

/** Denominators found on an inch rule. */
export const INCH_RULE_DENOMINATORS: ReadonlySet<number> = new Set([2, 4, 8, 16, 32, 64, 128]);

/** Two ways of writing one size, such as `203,2 mm (8")`, may differ by this share before we ask. */
export const SAME_SIZE_WITHIN = 0.02;

/** Characters of the user's text repeated in a message. */
export const QUOTED_CHARACTERS = 40;
