/** The slow twin of the sheet search: every first cut of every sheet, for a handful of pieces, kerf by kerf. */

export interface TwinPiece {
  readonly lengthMm: number;
  readonly widthMm: number;
  /** May lie with its length along the sheet's width. */
  readonly turnable: boolean;
}

export interface TwinStock {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly cost: number;
}

/** Sums of tenths must not lose a piece that fits exactly. */
const NOISE_MM = 1e-6;

/** What the cheapest sheets cost from which all pieces can be cut edge to edge. */
export function leastCostByTrying(
  pieces: readonly TwinPiece[],
  stocks: readonly TwinStock[],
  kerfMm: number,
): number {
  const known = new Map<string, boolean>();

  /** Whether the pieces of the set come out of the rectangle: by no cut, or by a first cut at any sum of sides. */
  function comesOut(set: number, lengthMm: number, widthMm: number): boolean {
    if (lengthMm <= 0 || widthMm <= 0) return false;
    const key = `${set} ${lengthMm.toFixed(4)} ${widthMm.toFixed(4)}`;
    let answer = known.get(key);
    if (answer === undefined) {
      answer = tryAll(set, lengthMm, widthMm);
      known.set(key, answer);
    }
    return answer;
  }

  function tryAll(set: number, lengthMm: number, widthMm: number): boolean {
    const members = pieces.filter((_, index) => (set & (1 << index)) !== 0);
    const [only] = members;
    if (members.length === 1 && only !== undefined) {
      const fits = (l: number, w: number): boolean => l <= lengthMm + NOISE_MM && w <= widthMm + NOISE_MM;
      return fits(only.lengthMm, only.widthMm) || (only.turnable && fits(only.widthMm, only.lengthMm));
    }
    // Area alone rules most out.
    const area = members.reduce((sum, piece) => sum + piece.lengthMm * piece.widthMm, 0);
    if (area > lengthMm * widthMm + NOISE_MM) return false;
    for (let half = (set - 1) & set; half > 0; half = (half - 1) & set) {
      for (const at of sidesOf(half, 'lengthMm'))
        if (comesOut(half, at, widthMm) && comesOut(set ^ half, lengthMm - at - kerfMm, widthMm)) return true;
      for (const at of sidesOf(half, 'widthMm'))
        if (comesOut(half, lengthMm, at) && comesOut(set ^ half, lengthMm, widthMm - at - kerfMm))
          return true;
    }
    return false;
  }

  /** Every sum of sides of some of the pieces with their kerfs: where a first cut can be without loss. */
  function sidesOf(set: number, side: 'lengthMm' | 'widthMm'): number[] {
    let sums = new Set([-kerfMm]);
    for (const [index, piece] of pieces.entries()) {
      if ((set & (1 << index)) === 0) continue;
      const sides = piece.turnable ? [piece.lengthMm, piece.widthMm] : [piece[side]];
      sums = new Set([...sums].flatMap((sum) => [sum, ...sides.map((each) => sum + each + kerfMm)]));
    }
    return [...sums].filter((sum) => sum > 0);
  }

  const all = (1 << pieces.length) - 1;
  const least = new Map<number, number>([[0, 0]]);
  function costOf(set: number): number {
    const before = least.get(set);
    if (before !== undefined) return before;
    // Some sheet holds the lowest piece; try every company it may have there.
    const lowest = set & -set;
    let best = Number.POSITIVE_INFINITY;
    for (let part = set; part > 0; part = (part - 1) & set) {
      if ((part & lowest) === 0) continue;
      for (const { lengthMm, widthMm, cost } of stocks)
        if (comesOut(part, lengthMm, widthMm)) best = Math.min(best, cost + costOf(set ^ part));
    }
    least.set(set, best);
    return best;
  }
  return costOf(all);
}
