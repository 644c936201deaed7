/**
 * A run of texts that count: "Shelf 1", "Shelf 2", or 300, 350, or 5 1/8", 5 3/8". The last number in a text is what
 * counts; everything before and after it has to be the same in all of them, and the step from one to the next too.
 * Sums (`=a + b`) and lengths in feet and inches do not count.
 */

/** A number as it is written, and what it is worth: `value / unit`, in whole numbers, so that steps stay exact. */
interface Numbered {
  readonly before: string;
  readonly after: string;
  readonly value: number;
  readonly unit: number;
  readonly style: 'decimal' | 'fraction';
  readonly mark: '.' | ',';
  /** Digits of a whole number with leading zeros, as in "07"; 1 otherwise. */
  readonly digits: number;
}

const LAST_NUMBER = /(\d+)[ -](\d+)\/(\d+)(?!.*\d)|(\d+)\/(\d+)(?!.*\d)|(\d+)(?:([.,])(\d+))?(?!.*\d)/s;
const FEET = /\d\s*['′]/;
/** Longer numbers are order codes, and could not be counted exactly. */
const MOST_DIGITS = 9;
const LARGEST_DENOMINATOR = 128;

/**
 * The text at each place of the run, counted from its first text; places before it are negative. Null when the texts
 * are no run; a single text is one, in steps of 1, when `alone` says so. A place below zero has no text.
 */
export function seriesOf(
  texts: readonly string[],
  alone: boolean,
): ((place: number) => string | null) | null {
  const numbers = texts.map(readNumbered);
  const [first, second] = numbers;
  if (first == null || !numbers.every((one) => one != null && sameFrame(one, first))) return null;
  if (second === undefined && !alone) return null;
  const all = numbers as readonly Numbered[];
  const unit = all.reduce((least, one) => leastCommonMultiple(least, one.unit), 1);
  const worth = (one: Numbered): number => one.value * (unit / one.unit);
  const step = second == null ? unit : worth(second) - worth(first);
  if (step === 0 || !all.every((one, place) => worth(one) === worth(first) + place * step)) return null;
  const pattern: Numbered = {
    ...first,
    unit,
    style: all.some(({ style }) => style === 'fraction') ? 'fraction' : 'decimal',
    mark: all.find(({ mark }) => mark === ',')?.mark ?? '.',
  };
  return (place) => {
    const value = worth(first) + place * step;
    return value < 0 ? null : `${first.before}${written(value, pattern)}${first.after}`;
  };
}

function readNumbered(text: string): Numbered | null {
  if (text.startsWith('=') || FEET.test(text)) return null;
  const found = LAST_NUMBER.exec(text);
  if (found === null || found[0].length > 2 * MOST_DIGITS) return null;
  const [number, whole, top, bottom, onlyTop, onlyBottom, integer = '', mark, decimals = ''] = found;
  const frame = { before: text.slice(0, found.index), after: text.slice(found.index + number.length) };
  if (integer !== '') {
    if (integer.length + decimals.length > MOST_DIGITS) return null;
    const unit = 10 ** decimals.length;
    return {
      ...frame,
      value: Number(integer) * unit + Number(decimals === '' ? '0' : decimals),
      unit,
      style: 'decimal',
      mark: mark === ',' ? ',' : '.',
      digits: integer.startsWith('0') ? integer.length : 1,
    };
  }
  const unit = Number(bottom ?? onlyBottom);
  if (unit === 0 || unit > LARGEST_DENOMINATOR) return null;
  const value = Number(whole ?? 0) * unit + Number(top ?? onlyTop);
  return { ...frame, value, unit, style: 'fraction', mark: '.', digits: 1 };
}

function sameFrame(a: Numbered, b: Numbered): boolean {
  return a.before === b.before && a.after === b.after;
}

function written(value: number, { unit, style, mark, digits }: Numbered): string {
  const whole = Math.floor(value / unit);
  const rest = value - whole * unit;
  if (style === 'decimal') {
    const places = Math.round(Math.log10(unit));
    const decimals = places === 0 ? '' : `${mark}${String(rest).padStart(places, '0')}`;
    return `${String(whole).padStart(digits, '0')}${decimals}`;
  }
  if (rest === 0) return String(whole);
  const shared = greatestCommonDivisor(rest, unit);
  const fraction = `${rest / shared}/${unit / shared}`;
  return whole === 0 ? fraction : `${whole} ${fraction}`;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

function leastCommonMultiple(a: number, b: number): number {
  return (a / greatestCommonDivisor(a, b)) * b;
}
