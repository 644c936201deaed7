/** What a plan comes to. */
export interface CuttingOutcome {
  /** Sheets or boards to buy. */
  readonly stocks: number;
  /** Minor units; null where a price is not known. */
  readonly costMinor: number | null;
}

/** What could be changed. Rows are named by part id, sizes by pack id. */
export type AdviceChange =
  | {
      readonly kind: 'smaller';
      readonly partId: string;
      readonly side: 'length' | 'width';
      readonly byMm: number;
    }
  | { readonly kind: 'fewer'; readonly partId: string }
  | { readonly kind: 'kerf'; readonly kerfMm: number }
  | { readonly kind: 'grain'; readonly partIds: readonly string[] }
  | { readonly kind: 'size'; readonly packId: string };

/** One statement: the change, and the plan before and after it, both of which can be cut. */
export interface CuttingAdvice {
  readonly change: AdviceChange;
  readonly before: CuttingOutcome;
  readonly after: CuttingOutcome;
}
