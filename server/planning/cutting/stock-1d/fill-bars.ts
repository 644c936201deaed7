import type { BarJob, BarPattern, BarPiece, BarStock } from './bar-job.ts';

/**
 * Cuts the given pieces from bars one bar at a time, each filled as well as a short search can.
 *
 * `counts`: how many of each piece; `limits`: how many of each stock. `order`: piece indices, longest first. `nodes`: search
 * nodes per bar. Result: the patterns, or null when a piece fits no stock that is left.
 * Method: the minimum bin slack heuristic with the longest piece fixed (MBS'): J. N. D. Gupta and J. C. Ho, "A new
 * heuristic algorithm for the one-dimensional bin-packing problem", Production Planning & Control 10 (1999);
 * K. Fleszar and K. S. Hindi, Computers & Operations Research 29 (2002). Among stocks the least cost per length
 * used wins, so that free stock comes first.
 */
export function fillBars(
  job: BarJob,
  counts: readonly number[],
  limits: readonly number[],
  order: readonly number[],
  nodes: number,
): BarPattern[] | null {
  const left = counts.slice();
  const stockLeft = limits.slice();
  const patterns: BarPattern[] = [];
  let at = 0;
  for (;;) {
    while (at < order.length && left[order[at] as number] === 0) at++;
    const longest = order[at];
    if (longest === undefined) return patterns;
    let best: Fill | null = null;
    let bestRate = Number.POSITIVE_INFINITY;
    let bestStock = -1;
    for (const [stock, { length, cost }] of job.stocks.entries()) {
      if ((stockLeft[stock] as number) < 1 || (job.pieces[longest] as BarPiece).length > length) continue;
      const fill = fillOne(job, left, order, at, length, nodes);
      const rate = cost / fill.used;
      if (rate < bestRate || (rate === bestRate && best !== null && fill.used > best.used)) {
        best = fill;
        bestRate = rate;
        bestStock = stock;
      }
    }
    if (best === null) return null;
    // The same fill again while the pieces last.
    let times = stockLeft[bestStock] as number;
    for (const { piece, count } of best.cuts)
      times = Math.min(times, Math.floor((left[piece] as number) / count));
    for (const { piece, count } of best.cuts) left[piece] = (left[piece] as number) - count * times;
    stockLeft[bestStock] = (stockLeft[bestStock] as number) - times;
    patterns.push({ stock: bestStock, cuts: best.cuts, times });
  }
}

interface Fill {
  readonly cuts: readonly { readonly piece: number; readonly count: number }[];
  readonly used: number;
}

/** The longest piece and what fills the rest best within the node limit. */
function fillOne(
  job: BarJob,
  left: readonly number[],
  order: readonly number[],
  from: number,
  capacity: number,
  nodeLimit: number,
): Fill {
  const first = order[from] as number;
  const start = (job.pieces[first] as BarPiece).length;
  const chosen = new Map<number, number>([[first, 1]]);
  let best = new Map(chosen);
  let bestUsed = start;
  let nodes = 0;
  const search = (place: number, used: number): void => {
    if (used > bestUsed) {
      bestUsed = used;
      best = new Map(chosen);
    }
    for (let next = place; next < order.length; next++) {
      if (nodes++ >= nodeLimit || bestUsed === capacity) return;
      const piece = order[next] as number;
      const { length } = job.pieces[piece] as BarPiece;
      const taken = chosen.get(piece) ?? 0;
      if (used + length > capacity || taken >= (left[piece] as number)) continue;
      chosen.set(piece, taken + 1);
      search(next, used + length);
      if (taken === 0) chosen.delete(piece);
      else chosen.set(piece, taken);
    }
  };
  search(from, start);
  return { cuts: [...best].map(([piece, count]) => ({ piece, count })), used: bestUsed };
}

/** Swaps every bar's stock for the cheapest that holds its pieces, as far as the `limits` per stock go. */
export function cheapestStocks(
  job: BarJob,
  patterns: readonly BarPattern[],
  limits: readonly number[],
): BarPattern[] {
  const used = job.stocks.map(() => 0);
  for (const { stock, times } of patterns) used[stock] = (used[stock] as number) + times;
  const swapped: BarPattern[] = [];
  for (const pattern of patterns) {
    let need = 0;
    for (const { piece, count } of pattern.cuts) need += count * (job.pieces[piece] as BarPiece).length;
    let { stock } = pattern;
    for (const [other, { length, cost }] of job.stocks.entries()) {
      if (length < need || cost >= (job.stocks[stock] as BarStock).cost) continue;
      if ((used[other] as number) + pattern.times > (limits[other] as number)) continue;
      used[stock] = (used[stock] as number) - pattern.times;
      used[other] = (used[other] as number) + pattern.times;
      stock = other;
    }
    swapped.push({ ...pattern, stock });
  }
  return swapped;
}
