import type { Choice } from '../../grid/grid-column.ts';

/** The two cells of a part that take one of a few words. */

export const GRAIN_CHOICES: readonly Choice[] = [
  { value: 'along', text: 'along', hint: 'grain runs with the length' },
  { value: 'across', text: 'across', hint: 'grain runs with the width' },
  { value: 'free', text: 'free', hint: 'may be turned to save material' },
];
export const SHAPE_CHOICES: readonly Choice[] = [
  { value: 'rectangle', text: 'rectangle' },
  { value: 'round', text: 'round', hint: 'length and width are the diameter' },
];
