import type { Pack } from '../product.ts';

export interface PackQuestion {
  /** In the product's unit, 0 or more. */
  readonly need: number;
  /** In the product's unit, 0 or more. */
  readonly onHand: number;
  /** Amounts above 0 in the same unit. */
  readonly packs: readonly Pack[];
  /** ISO 4217 code the project reckons in. */
  readonly currency: string;
}

/**
 * How the packs were ranked. `priced`: by cost. `unpriced`: no pack has a price. `other-currency`: every price is in
 * another currency. `none`: there is no pack. `enough`: nothing need be bought.
 */
export type PackBasis = 'priced' | 'unpriced' | 'other-currency' | 'none' | 'enough';

export interface PackChoice {
  readonly basis: PackBasis;
  /** Largest first; only packs that are bought. */
  readonly packs: readonly { readonly pack: Pack; readonly count: number }[];
  /** Need less what is on hand, not below 0. */
  readonly toBuy: number;
  readonly bought: number;
  /** What remains of purchase and stock together; null when the need cannot be covered. */
  readonly leftover: number | null;
  /** Whole minor units without tax; null when not known. */
  readonly costMinor: number | null;
  /** True when no mix can be better; false for dozens of packs at prices in proportion to size. */
  readonly proven: boolean;
}
