import type { CostCategory } from '../../../server/planning/project-input.ts';

/** Categories of cost in the order they are listed. */
export const CATEGORY_WORDS: Readonly<Record<CostCategory, string>> = {
  sheets: 'Sheets',
  boards: 'Boards',
  banding: 'Banding',
  finish: 'Finish',
  thinner: 'Thinner',
  abrasives: 'Abrasives',
  glue: 'Glue',
  filler: 'Filler',
  hardware: 'Hardware',
  consumables: 'Consumables',
  other: 'Other',
};

/** "2 lines without a price". */
export function unpricedWords(lines: number): string {
  return lines === 1 ? '1 line without a price' : `${lines} lines without a price`;
}
