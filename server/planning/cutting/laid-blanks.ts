import type { CutNode, StockLayout } from '../plan-output.ts';
import type { StockOffer } from './stock-offer.ts';

/** A cutting plan of the blanks of one material, with the bounds no plan can beat. */
export interface LaidBlanks {
  readonly layouts: readonly StockLayout[];
  /** In the unit of the costs given. */
  readonly cost: number;
  readonly boundCost: number;
  /** Bound on the number of stocks to buy. */
  readonly boundStocks: number;
  /** A longer search has found better bounds than the plan was made with. */
  readonly boundRaised?: boolean;
  /** So many stocks are being cut and stay as they are. */
  readonly begunStocks?: number;
  /** Net area of the blanks, m2. */
  readonly netM2: number;
}

type Place = Omit<StockLayout, 'id' | 'count' | 'cut'>;

/** What a layout says of the stock it is cut from. */
export function offerPlace(offer: StockOffer): Place {
  const { packId, onHandId, label, lengthMm, widthMm } = offer;
  return { packId, onHandId, label, lengthMm, widthMm };
}

/** Equal layouts joined and counted, numbered in order. */
export function countLayouts(
  sheets: readonly { readonly place: Place; readonly cut: CutNode; readonly times: number }[],
): StockLayout[] {
  const counted = new Map<string, { place: Place; cut: CutNode; count: number }>();
  for (const { place, cut, times } of sheets) {
    const key = `${place.packId} ${place.onHandId} ${JSON.stringify(cut)}`;
    const known = counted.get(key);
    if (known === undefined) counted.set(key, { place, cut, count: times });
    else known.count += times;
  }
  return [...counted.values()].map(({ place, cut, count }, index) => ({
    id: String(index + 1),
    ...place,
    count,
    cut,
  }));
}
