import type { Pack } from '../../product.ts';
import type { CountedPack } from '../priced-packs.ts';
import { coversPack } from './line-offers.ts';

/** Packs that are ordered already; `pack` is null where the catalogue no longer has it. */
export interface OrderedPieces {
  readonly pack: Pack | null;
  readonly amount: number;
  readonly count: number;
}

/**
 * Which whole packs of a cutting plan are still to be ordered?
 *
 * @param planned packs the plan buys
 * @param ordered packs that were ordered and kept; one that the catalogue no longer has stands for one of its amount
 * @returns planned packs less one ordered pack each: first the same pack, then one that is at least as large
 *
 * Source: definition. Valid range: any. Departures: two small ordered sheets never stand for a large one.
 * Example: 4 sheets planned, 3 of them ordered: 1.
 */
export function piecesToOrder(
  planned: readonly CountedPack[],
  ordered: readonly OrderedPieces[],
): readonly CountedPack[] {
  const left = planned.map(({ count }) => count);
  const spare = ordered.map(({ count }) => count);
  const match = (fits: (have: OrderedPieces, pack: Pack) => boolean): void => {
    for (const [at, { pack }] of planned.entries())
      for (const [from, have] of ordered.entries()) {
        const share = Math.min(left[at] ?? 0, spare[from] ?? 0);
        if (share === 0 || !fits(have, pack)) continue;
        left[at] = (left[at] ?? 0) - share;
        spare[from] = (spare[from] ?? 0) - share;
      }
  };
  match((have, pack) => have.pack !== null && have.pack.id === pack.id);
  match((have, pack) => (have.pack === null ? have.amount >= pack.amount : coversPack(have.pack, pack)));
  return planned.flatMap(({ pack }, at) => {
    const count = left[at] ?? 0;
    return count > 0 ? [{ pack, count }] : [];
  });
}
