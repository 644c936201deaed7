import { type Cover, type CutBound, leastCover, wholeCoverCost } from '../least-cover.ts';
import { dualFeasibleFunctions } from './dual-feasible-functions.ts';
import type { SheetJob } from './sheet-job.ts';

/**
 * How many sheets, and how much money, every plan needs at least.
 *
 * `job`: see sheet-job.ts; stocks with a limit count as free of their limit unless they cost nothing. `effort`: about
 * how many piece weights may be looked at; more gives a better bound.
 * Result: the greatest bound over all pairs of dual feasible functions, one per direction; the pair of plain lengths
 * is the area bound. It holds for cuts of any kind, so also for guillotine cuts.
 * Source: as for dualFeasibleFunctions. Pieces that may be turned count the lesser of their two weights.
 */
export function sheetsBound(job: SheetJob, effort: number): CutBound {
  const { pieces, stocks } = job;
  if (pieces.length === 0) return { cost: 0, stocks: 0 };
  const limit = Math.max(2, Math.floor(Math.sqrt(effort / pieces.length)));
  const turnable = pieces.filter((piece) => piece.turnable);
  const lengths = [...pieces.map((piece) => piece.length), ...turnable.map((piece) => piece.width)];
  const widths = [...pieces.map((piece) => piece.width), ...turnable.map((piece) => piece.length)];
  const alongs = dualFeasibleFunctions(Math.max(...stocks.map((stock) => stock.length)), lengths, limit);
  const acrosses = dualFeasibleFunctions(Math.max(...stocks.map((stock) => stock.width)), widths, limit);

  // Images once per function, so that a pair costs one multiplication per piece.
  const image = (functions: typeof alongs, side: 'length' | 'width'): Float64Array[] =>
    functions.map((function_) => Float64Array.from(pieces, (piece) => function_(piece[side])));
  const lengthAlong = image(alongs, 'length');
  const widthAcross = image(acrosses, 'width');
  const widthAlong = turnable.length > 0 ? image(alongs, 'width') : lengthAlong;
  const lengthAcross = turnable.length > 0 ? image(acrosses, 'length') : widthAcross;

  const bound = { cost: 0, stocks: 0 };
  let tightest: Cover | null = null;
  for (const [first, along] of alongs.entries()) {
    for (const [second, across] of acrosses.entries()) {
      const plainAlong = lengthAlong[first] as Float64Array;
      const plainAcross = widthAcross[second] as Float64Array;
      const turnedAlong = widthAlong[first] as Float64Array;
      const turnedAcross = lengthAcross[second] as Float64Array;
      let weight = 0;
      for (let index = 0; index < pieces.length; index++) {
        const piece = pieces[index] as { count: number; turnable: boolean };
        let one = (plainAlong[index] as number) * (plainAcross[index] as number);
        if (piece.turnable)
          one = Math.min(one, (turnedAlong[index] as number) * (turnedAcross[index] as number));
        weight += piece.count * one;
      }
      const holds = stocks.map((stock) => along(stock.length) * across(stock.width));
      const cover = leastCover(weight, holds, stocks);
      bound.stocks = Math.max(bound.stocks, cover.count);
      if (cover.cost <= bound.cost) continue;
      bound.cost = cover.cost;
      tightest = cover;
    }
  }
  // Whole sheets of several prices are counted out for the tightest pair only.
  if (tightest !== null) bound.cost = Math.max(bound.cost, wholeCoverCost(tightest));
  return bound;
}
