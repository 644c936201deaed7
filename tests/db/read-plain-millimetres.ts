import type { ReadLengthCell } from '../../db/row-columns.ts';

/** A length reader for tests of the database alone: whole numbers, in the project's unit. */
export const readPlainMillimetres: ReadLengthCell = (text, units) => {
  const match = /^(\d+)( mm|"|)$/.exec(text);
  if (match === null) return { text, mm: null };
  const inches = match[2] === '"' || (match[2] === '' && units === 'us');
  return { text: `${match[1]}${inches ? '"' : ' mm'}`, mm: Number(match[1]) * (inches ? 25.4 : 1) };
};
