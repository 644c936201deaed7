import type { ImportUnit } from './guess-mapping.ts';

const UNIT_WORDS: Readonly<Record<string, Exclude<ImportUnit, null>>> = {
  mm: 'mm',
  millimetres: 'mm',
  millimeters: 'mm',
  cm: 'cm',
  m: 'm',
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  '”': 'in',
  ft: 'ft',
  feet: 'ft',
};

/** "Length (mm)" -> word "length", unit mm; "W, in." -> "w", in; "No." -> "no". */
export function splitHeading(heading: string): { readonly word: string; readonly unit: ImportUnit } {
  const lower = heading
    .toLowerCase()
    .replaceAll('×', 'x')
    .replace(/[.:#*]/g, ' ')
    .trim();
  const bracketed =
    /^(.*?)[([{]\s*([^)\]}]+?)\s*[)\]}]\s*$/.exec(lower) ??
    /^(.*?)(?:,|\bin\b(?=\s+(?:mm|cm|m|inch|inches|ft|feet)$)|\/|\s-)\s*(\S+)$/.exec(lower);
  const unitWord = (bracketed?.[2] ?? '').trim();
  const unit = Object.hasOwn(UNIT_WORDS, unitWord) ? UNIT_WORDS[unitWord] : undefined;
  const word = unit === undefined ? lower : (bracketed?.[1] ?? '');
  return {
    word: word
      .replace(/[_\s]+/g, ' ')
      .replace(/[\s,(/-]+$/, '')
      .trim(),
    unit: unit ?? null,
  };
}
