import type { CoverageEnd } from './coverage-ends.ts';

/** One reason for which a product is needed: a coat, a pass, a usage rule, a line the user added. */
export interface ProductDemand {
  readonly productId: string;
  /** The reason in words. */
  readonly name: string;
  /** Amount in the product's unit; null is unknown. */
  readonly need: number | null;
  /** The same at each end of the coverage range. */
  readonly atCoverage: Readonly<Record<CoverageEnd, number | null>>;
  /** Path of the figure it comes from; empty when there is none. */
  readonly from: string;
  readonly notes: readonly string[];
}
