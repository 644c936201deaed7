/** What could be told apart in one line of a list written as text. Null where the line does not say. */
export interface LooseLine {
  readonly name: string | null;
  readonly quantity: string | null;
  /** The size set as it stands, "8-1/2” x 8”"; null when the line holds none. */
  readonly size: string | null;
}

const NUMBER = String.raw`(?:\d+\s*['’′]\s*[-–]?\s*)?(?:\d+\s*[/⁄]\s*\d+|\d+(?:[.,]\d+)?(?:[\s-]+\d+\s*[/⁄]\s*\d+|\s*[¼½¾⅛⅜⅝⅞⅓⅔])?|[¼½¾⅛⅜⅝⅞⅓⅔]|\.\d+)`;
const UNIT = String.raw`\s*(?:mm|cm|m\b|inches|inch|in\b\.?|feet|ft\b\.?|["”″'’′]{1,2})?(?:\s*(?:long|wide|thick|deep|high))?`;
const SIZE = new RegExp(`${NUMBER}${UNIT}(?:\\s*(?:[x×*]|by)\\s*${NUMBER}${UNIT}){1,2}`, 'iu');
const COUNT_WORDS = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/**
 * Takes a line such as `PIECE B (12) 3/4” shelf plates – 8-1/2” x 8”`, `4 pcs side 600 x 300`, `3 off 12 x 36` or
 * `five strips 2 x 60` apart into name, quantity and size. Only what is marked as a count is read as one: a number
 * in brackets, a number before pcs, off, no., or x, a count word, or a number that opens a line before a word.
 * Nothing is guessed: what is left over stays in the name.
 */
export function readLooseLine(line: string): LooseLine {
  let rest = line.replace(/\s+/g, ' ').trim();
  const counted = takeCount(rest);
  rest = counted.rest;
  const size = SIZE.exec(rest);
  if (size !== null) rest = `${rest.slice(0, size.index)} ${rest.slice(size.index + size[0].length)}`;
  const opening = counted.quantity === null && size !== null ? /^\s*(\d{1,4})\s+(?=\p{L})/u.exec(rest) : null;
  if (opening !== null) rest = rest.slice(opening[0].length);
  const name = rest
    .replace(/\s+/g, ' ')
    .replace(/^[\s,;:–—-]+|[\s,;:–—-]+$/g, '')
    .trim();
  return {
    name: name === '' ? null : name,
    quantity: counted.quantity ?? opening?.[1] ?? null,
    size: size?.[0].trim() ?? null,
  };
}

function takeCount(text: string): { readonly quantity: string | null; readonly rest: string } {
  const patterns = [
    /\((\d{1,4})\)/u,
    /(?<![\d/.,])(\d{1,4})\s*(?:pcs?\b\.?|pieces?\b|off\b|nos?\b\.?|ea\b\.?)/iu,
    /\b(?:qty|quantity)\s*[:=]?\s*(\d{1,4})\b/iu,
    /^(\d{1,4})\s*[x×]\s+(?=\p{L})/iu,
  ];
  for (const pattern of patterns) {
    const found = pattern.exec(text);
    if (found !== null) return { quantity: found[1] ?? null, rest: text.replace(found[0], ' ') };
  }
  const word = new RegExp(`^(${COUNT_WORDS.join('|')})\\b`, 'iu').exec(text);
  if (word !== null) {
    return {
      quantity: String(COUNT_WORDS.indexOf((word[1] ?? '').toLowerCase()) + 1),
      rest: text.slice(word[0].length),
    };
  }
  return { quantity: null, rest: text };
}

/**
 * Joins lists in which one part takes two or three lines (name; size; thickness and species): a line with a size and
 * no name belongs to the nameless-size line before it. Returns one text per part with the source line it begins on.
 */
export function joinSplitLines(
  lines: readonly string[],
  numbers: readonly number[],
): { readonly text: string; readonly line: number }[] {
  const parts: { text: string; line: number; hasSize: boolean }[] = [];
  for (const [index, line] of lines.entries()) {
    const read = readLooseLine(line);
    const last = parts.at(-1);
    if (last !== undefined && !last.hasSize && read.size !== null && read.name === null) {
      last.text = `${last.text} ${line}`;
      last.hasSize = true;
    } else if (last?.hasSize && read.size === null && /^[\d\s/⁄.,¼½¾⅛⅜⅝⅞"”″mcin-]+\s+\p{L}/u.test(line)) {
      last.text = `${last.text} ${line}`;
    } else {
      parts.push({ text: line, line: numbers[index] ?? index + 1, hasSize: read.size !== null });
    }
  }
  return parts.map(({ text, line }) => ({ text, line }));
}
