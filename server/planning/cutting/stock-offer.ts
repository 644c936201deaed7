/** One kind of stock that parts can be cut from: a pack to buy, or an offcut or board on hand. */
export interface StockOffer {
  readonly packId: string | null;
  readonly onHandId: string | null;
  readonly label: string;
  /** Full size, mm. */
  readonly lengthMm: number;
  readonly widthMm: number;
  /** Taken off every side before cutting, mm. */
  readonly trimMm: number;
  /** Null when not known; 0 for stock on hand. Minor units. */
  readonly priceMinor: number | null;
  /** How many there are; Infinity for packs. */
  readonly limit: number;
}
