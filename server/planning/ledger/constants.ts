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

/**
 * Most one line or charge may come to, minor units: ten thousand million of a currency with cents, the limit of what can be
 * entered. Beyond it, sums would not be exact. Rule of ours.
 */
export const MOST_AMOUNT_MINOR = 1_000_000_000_000;

/** Tax rates and other percents are read to a ten-thousandth of a percent, so that reckoning with them is exact. */
export const PERCENT_STEPS = 10_000;

/** A whole in percent steps: 100 %. */
export const WHOLE_IN_PERCENT_STEPS = 100 * PERCENT_STEPS;

/** Shares of a payment, hours and areas are read to a millionth. */
export const MILLION = 1_000_000;
