import type { CostCategory } from '../project-input.ts';

/** One thing that costs money, whole minor units. Null where it is not known. */
export interface CostItem {
  readonly name: string;
  readonly category: CostCategory;
  /** Null for what is not in the catalogue, for charges, and for what was bought without an order. */
  readonly productId: string | null;
  readonly netMinor: number | null;
  /** With tax. */
  readonly totalMinor: number | null;
  /** Path of the plan's figure it comes from. */
  readonly from?: string;
}
