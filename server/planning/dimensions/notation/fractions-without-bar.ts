import { INCH_RULE_DENOMINATORS } from '../constants.ts';

/**
 * Which fractions of an inch could these digits be if the bar between them was lost? Numerator odd and below a
 * denominator found on an inch rule. No units. A rule of ours: bars vanish when a page is stripped to plain text.
 *
 * Example: `1316` could be 13/16; `24` could be none.
 */
export function fractionsWithoutBar(digits: string): string[] {
  if (!/^[1-9]\d{1,4}$/.test(digits)) return [];
  const found: string[] = [];
  for (let cut = 1; cut < digits.length; cut++) {
    const [over, under] = [digits.slice(0, cut), digits.slice(cut)];
    if (!under.startsWith('0') && INCH_RULE_DENOMINATORS.has(Number(under)) && properOdd(over, Number(under)))
      found.push(`${over}/${under}`);
  }
  return found;
}

/**
 * Is this a fraction as an inch rule names it: odd over even, and below one? `over`: digits; `bottom`: denominator.
 * No units. Source: reducing a fraction whose denominator is a power of two leaves an odd numerator; exact.
 *
 * Example: 13/16 is; 12/16 and 17/16 are not.
 */
export function properOdd(over: string, bottom: number): boolean {
  return !over.startsWith('0') && Number(over) < bottom && Number(over) % 2 === 1;
}
