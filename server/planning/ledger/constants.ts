import type { ProductKind } from '../product.ts';
import type { CostCategory } from '../project-input.ts';

/** Under which heading of the ledger a catalogue product is counted. */
export const CATEGORY_OF_KIND: Readonly<Record<ProductKind, CostCategory>> = {
  sheet: 'sheets',
  board: 'boards',
  banding: 'banding',
  finish: 'finish',
  thinner: 'thinner',
  abrasive: 'abrasives',
  glue: 'glue',
  filler: 'filler',
  hardware: 'hardware',
  consumable: 'consumables',
};
