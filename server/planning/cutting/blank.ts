/** The pieces to cut for one part row: cut size, how many, and how the part lies to the stock's grain. */
export interface Blank {
  readonly partId: string;
  /** The part's name, or "part <id>" when it has none. */
  readonly name: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly count: number;
  readonly grain: 'along' | 'across' | 'free';
  /** Set where several parts are cut from one piece, so that the grain runs through them. */
  readonly match?: GrainMatch;
}

/** Parts that lie side by side in one piece, in their order; each as it is laid on the stock. */
export interface GrainMatch {
  /** As typed. */
  readonly name: string;
  /** Direction on the stock in which they follow each other. */
  readonly along: 'length' | 'width';
  /** One each, count 1. */
  readonly parts: readonly Blank[];
}

/** The size a blank takes along and across the stock, in millimetres, when laid plainly: `across` is laid turned. */
export function laidSize(blank: Blank): { lengthMm: number; widthMm: number } {
  return blank.grain === 'across'
    ? { lengthMm: blank.widthMm, widthMm: blank.lengthMm }
    : { lengthMm: blank.lengthMm, widthMm: blank.widthMm };
}
