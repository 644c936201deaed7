import { MAX_QUANTITY, MAX_TEXT } from './constants.ts';
import { quoted, type Refusal, refuse } from './refusal.ts';

export type QuantityReading =
  | { readonly ok: true; readonly quantity: number; readonly normalised: string }
  | Refusal;

const AROUND = /^(?:[x×]\s*)?(.*?)(?:\s*(?:[x×]|pcs?|pieces?|off|ea|each|no|nr)\.?)?$/iu;
const WAY_OUT = 'Type a whole number of pieces, such as 4.';

/**
 * How many pieces does a typed cell say?
 *
 * `text`: `4`, `4 pcs`, `(12)`, `3 off`, `x4`. Result: pieces, a whole number from 1 to 100 000, with the text
 * reduced to its digits; or a refusal. `2.5` and `-3` are refused as not whole, `1,000` as readable two ways. A rule
 * of ours.
 *
 * Example: `(12)` is 12.
 */
export function readQuantity(text: string): QuantityReading {
  if (text.length > MAX_TEXT)
    return refuse('quantity-unreadable', `The quantity is ${text.length} characters long.`, WAY_OUT);
  const tidy = text.replace(/\s+/gu, ' ').trim();
  if (tidy === '') return refuse('quantity-unreadable', 'The quantity is empty.', WAY_OUT);
  const inner = (/^\(([^()]*)\)$/.exec(tidy)?.[1] ?? tidy).trim();
  const core = AROUND.exec(inner)?.[1]?.trim() ?? inner;

  if (/^[-−–]\s*\d+(?:[.,]\d+)?$/.test(core))
    return refuse('quantity-not-whole', `${quoted(tidy)} is below 1.`, WAY_OUT);
  if (/^\d{1,3}(?:[,.]\d{3})+$/.test(core))
    return refuse(
      'quantity-unreadable',
      `${quoted(tidy)} can be read with a decimal mark or a thousands mark.`,
      'Type the quantity with digits only, such as 1000.',
    );
  if (/^\d*[.,]\d+$/.test(core))
    return refuse('quantity-not-whole', `${quoted(tidy)} is not a whole number.`, WAY_OUT);
  if (!/^\d+$/.test(core))
    return refuse('quantity-unreadable', `${quoted(tidy)} is not a quantity.`, WAY_OUT);
  const quantity = Number(core);
  if (quantity < 1) return refuse('quantity-not-whole', `${quoted(tidy)} is below 1.`, WAY_OUT);
  if (quantity > MAX_QUANTITY)
    return refuse(
      'quantity-too-large',
      `${quoted(tidy)} is more than ${MAX_QUANTITY} pieces.`,
      `Type a quantity from 1 to ${MAX_QUANTITY}.`,
    );
  return { ok: true, quantity, normalised: String(quantity) };
}
