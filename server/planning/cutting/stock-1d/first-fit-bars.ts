import { firstFitDecreasing } from '../first-fit-decreasing.ts';
import type { BarJob, BarPattern, BarPiece, BarStock } from './bar-job.ts';

/** In a long list only so many bars of limited stock are offered, so that the time stays in proportion. */
const LIMITED_OFFERED = 100;

/**
 * A plan for long lists in n log n steps: longest pieces first, limited stock first, the rest on one stock.
 *
 * `job`: see bar-job.ts. `main`: the stock without limit to use; pieces too long for it go on `others`, in that order.
 * Result: one pattern per bar, equal ones joined. Source: as for firstFitDecreasing.
 */
export function firstFitBars(job: BarJob, main: number, others: readonly number[]): BarPattern[] {
  const lengthOf = (piece: number): number => (job.pieces[piece] as BarPiece).length;
  const bars: { stock: number; pieces: number[]; room: number }[] = [];
  for (const [stock, { length, limit }] of job.stocks.entries()) {
    if (!Number.isFinite(limit)) continue;
    for (let copy = 0; copy < limit && bars.length < LIMITED_OFFERED; copy++)
      bars.push({ stock, pieces: [], room: length });
  }
  const limited = bars.length;
  const longestFirst = job.pieces.map((_, piece) => piece).sort((a, b) => lengthOf(b) - lengthOf(a) || a - b);
  const onStock = new Map<number, number[]>();
  for (const piece of longestFirst) {
    for (let copy = 0; copy < (job.pieces[piece] as BarPiece).count; copy++) {
      const bar = bars.find(({ room }) => room >= lengthOf(piece));
      if (bar !== undefined) {
        bar.pieces.push(piece);
        bar.room -= lengthOf(piece);
        continue;
      }
      const stock = [main, ...others].find(
        (index) => (job.stocks[index] as BarStock).length >= lengthOf(piece),
      );
      if (stock === undefined)
        throw new RangeError(`firstFitBars: piece ${piece} is longer than every stock`);
      const list = onStock.get(stock);
      if (list === undefined) onStock.set(stock, [piece]);
      else list.push(piece);
    }
  }
  for (const [stock, pieces] of onStock) {
    const start = bars.length;
    const barOf = firstFitDecreasing(pieces.map(lengthOf), (job.stocks[stock] as BarStock).length);
    for (const [at, piece] of pieces.entries()) {
      const bar = start + (barOf[at] as number);
      const known = bars[bar];
      if (known === undefined) bars[bar] = { stock, pieces: [piece], room: 0 };
      else known.pieces.push(piece);
    }
  }
  return joined(bars.filter(({ pieces }, index) => index >= limited || pieces.length > 0));
}

function joined(bars: readonly { stock: number; pieces: readonly number[] }[]): BarPattern[] {
  const byKey = new Map<string, BarPattern & { times: number }>();
  for (const { stock, pieces } of bars) {
    const counts = new Map<number, number>();
    for (const piece of pieces) counts.set(piece, (counts.get(piece) ?? 0) + 1);
    const cuts = [...counts].map(([piece, count]) => ({ piece, count }));
    const key = `${stock}:${cuts.map(({ piece, count }) => `${piece}x${count}`).join()}`;
    const known = byKey.get(key);
    if (known === undefined) byKey.set(key, { stock, cuts, times: 1 });
    else (known as { times: number }).times++;
  }
  return [...byKey.values()];
}
