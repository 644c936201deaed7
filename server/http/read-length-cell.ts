import type { ReadLengthCell } from '../../db/row-columns.ts';
import { readLength } from '../planning/dimensions/read-length.ts';
import { selfContainedExpression } from '../planning/dimensions/self-contained-expression.ts';

/** A length cell as it is stored: self-contained where it is a readable length or calculation, otherwise as typed. */
export const readLengthCell: ReadLengthCell = (text, units) => {
  if (text.trimStart().startsWith('=')) return { text: selfContainedExpression(text, units), mm: null };
  const reading = readLength(text, units, { allowZero: true });
  return reading.ok ? { text: reading.normalised, mm: reading.mm } : { text, mm: null };
};
