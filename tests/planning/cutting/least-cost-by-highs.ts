import loadHighs, { type LegacyHighs } from 'highs';
import type { BarsToCut } from '../../../server/planning/cutting/stock-1d/cut-bars.ts';

/** Lengths in whole tenths of a millimetre, so that sums are exact. */
const PER_MM = 10;

/** The general-purpose solver, loaded once. */
export function loadSolver(): Promise<LegacyHighs> {
  return loadHighs();
}

/**
 * The least cost of cutting bars, by another way: every way to fill a stock to which no further piece can be added is
 * listed, and a general-purpose solver for mixed-integer programmes (HiGHS) chooses how often each is used so that there
 * are enough of every piece. More pieces than asked for cost nothing extra, so the least cost is the same.
 */
export function leastCostByHighs(highs: LegacyHighs, { pieces, stocks, kerfMm }: BarsToCut): number {
  const sizes = pieces.map(({ lengthMm }) => Math.round((lengthMm + kerfMm) * PER_MM));
  const columns = stocks.flatMap(({ lengthMm, cost }, stock) =>
    fullPatterns(
      sizes,
      pieces.map(({ count }) => count),
      Math.round((lengthMm + kerfMm) * PER_MM),
    ).map((counts) => ({ stock, cost, counts })),
  );
  const sum = (terms: readonly (readonly [number, number])[]): string =>
    terms.map(([factor, column]) => `+ ${factor} x${column}`).join(' ');
  const rows = pieces.map(
    ({ count }, piece) =>
      `d${piece}: ${sum(columns.flatMap(({ counts }, at) => (counts[piece] ? [[counts[piece], at] as const] : [])))} >= ${count}`,
  );
  for (const [stock, { limit }] of stocks.entries()) {
    const own = columns.flatMap((column, at) => (column.stock === stock ? [[1, at] as const] : []));
    if (Number.isFinite(limit) && own.length > 0) rows.push(`l${stock}: ${sum(own)} <= ${limit}`);
  }
  const names = columns.map((_, at) => `x${at}`).join(' ');
  const model = `Minimize\n cost: ${sum(columns.map(({ cost }, at) => [cost, at] as const))}\nSubject To\n ${rows.join('\n ')}\nGeneral\n ${names}\nEnd\n`;
  const solved = highs.solve(model, { mip_rel_gap: 0, mip_abs_gap: 0.5, output_flag: false });
  if (solved.Status !== 'Optimal') throw new Error(`HiGHS says ${solved.Status}`);
  return Math.round(solved.ObjectiveValue);
}

/** Every fill of a stock to which no piece that is still asked for can be added: numbers of each piece. */
function fullPatterns(sizes: readonly number[], counts: readonly number[], room: number): number[][] {
  const found: number[][] = [];
  const chosen = sizes.map(() => 0);
  const fill = (at: number, left: number): void => {
    const size = sizes[at];
    if (size === undefined) {
      const isFull = sizes.every((each, piece) => each > left || chosen[piece] === counts[piece]);
      if (isFull && left < room) found.push([...chosen]);
      return;
    }
    const most = Math.min(counts[at] ?? 0, Math.floor(left / size));
    for (let count = most; count >= 0; count--) {
      chosen[at] = count;
      fill(at + 1, left - count * size);
    }
    chosen[at] = 0;
  };
  fill(0, room);
  return found;
}
