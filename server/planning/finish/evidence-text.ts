import type { Basis, Evidence } from '../product.ts';
import { PRACTICE_SOURCE } from './constants.ts';

const OPENING: Readonly<Record<Basis, string>> = {
  published: '',
  label: 'label value',
  practice: PRACTICE_SOURCE,
  memory: 'from memory',
  user: 'your own figure',
};

/**
 * How is the evidence of a catalogue figure printed to the reader?
 *
 * @param evidence basis, source, date and note as stored
 * @returns one line: "label value, typical of the family, read 2026-01-31 (note)"
 *
 * No source: a wording of ours. A rule of thumb prints "common practice, no source" whatever else is stored.
 */
export function evidenceText({ basis, source, readOn, note }: Evidence): string {
  const named = basis === 'practice' ? '' : source.trim();
  const words = [OPENING[basis], named].filter((word) => word !== '');
  if (words.length === 0) words.push('published, source not named');
  if (readOn !== null) words.push(basis === 'user' ? `entered ${readOn}` : `read ${readOn}`);
  return words.join(', ') + (note ? ` (${note})` : '');
}
