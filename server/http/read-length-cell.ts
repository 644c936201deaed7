import type { ReadLengthCell } from '../../db/row-columns.ts';
import { readLength } from '../planning/dimensions/read-length.ts';

/** A length cell as it is stored: self-contained where it is a plain readable length, otherwise as typed. */
export const readLengthCell: ReadLengthCell = (text, units) => {
  if (text.trimStart().startsWith('=')) return { text, mm: null };
  const reading = readLength(text, units, { allowZero: true });
  return reading.ok ? { text: reading.normalised, mm: reading.mm } : { text, mm: null };
};
