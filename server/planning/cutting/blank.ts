/** The pieces to cut for one part row: cut size, how many, and how the part lies to the stock's grain. */
export interface Blank {
  readonly partId: string;
  /** The part's name, or "part <id>" when it has none. */
  readonly name: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly count: number;
  readonly grain: 'along' | 'across' | 'free';
}

/** The size a blank takes along and across the stock, in millimetres, when laid plainly: `across` is laid turned. */
export function laidSize(blank: Blank): { lengthMm: number; widthMm: number } {
  return blank.grain === 'across'
    ? { lengthMm: blank.widthMm, widthMm: blank.lengthMm }
    : { lengthMm: blank.lengthMm, widthMm: blank.widthMm };
}
