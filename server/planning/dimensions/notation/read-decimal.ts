import { quoted, type Refusal, refuse } from '../refusal.ts';

/**
 * What number do these digits, points and commas mean?
 *
 * `text`: digits with points or commas, no sign, no unit. Result: the number, or a refusal. A point is a decimal
 * point. A comma followed by anything but three digits is a decimal comma; with exactly three digits after it
 * (`1,220`) it may be either mark and is asked about, unless the number starts with 0 (`0,125`) or holds both marks
 * (`1,220.5` and `1.220,5` can each be read one way only). No units. A rule of ours: ask, never guess.
 *
 * Example: `12,5` is 12.5; `1,220` is refused.
 */
export function readDecimal(text: string): { readonly ok: true; readonly value: number } | Refusal {
  const plain = (digits: string) => ({ ok: true as const, value: Number(digits) });
  if (/^(\d+|\d*\.\d+)$/.test(text)) return plain(text);
  if (/^[1-9]\d{0,2},\d{3}$/.test(text)) return ambiguousComma(text);
  if (/^\d*,\d+$/.test(text)) return plain(text.replace(',', '.'));
  if (/^\d{1,3}(,\d{3})+\.\d+$/.test(text)) return plain(text.replaceAll(',', ''));
  if (/^\d{1,3}(\.\d{3})+,\d+$/.test(text)) return plain(text.replaceAll('.', '').replace(',', '.'));
  return refuse(
    'dimension-unreadable',
    `${quoted(text)} has more points or commas than a number can have.`,
    'Write the number with one decimal point and no grouping, such as 1220.5.',
  );
}

function ambiguousComma(text: string): Refusal {
  const joined = text.replace(',', '');
  const decimal = text.replace(',', '.');
  return refuse(
    'dimension-ambiguous',
    `${quoted(text)} can mean ${joined} or ${decimal}.`,
    `Write ${joined} without a comma, or ${decimal} with a point.`,
  );
}
