import { formatLength, type LengthFormat } from '../display/format-length.ts';

/**
 * A size as a sentence shows it: "2420 mm x 1200 mm", or in the project's inches.
 *
 * `sizesMm`: one or two lengths, mm. `format`: the project's settings. Result: text. No source: joins lengths.
 * Example: sizeText([2420, 1200], metric settings) is "2420 mm x 1200 mm".
 */
export function sizeText(sizesMm: readonly number[], format: LengthFormat): string {
  return sizesMm.map((size) => formatLength(size, format)).join(' x ');
}
