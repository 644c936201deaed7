/**
 * The most valuable way to fill a length with pieces, for every length up to the longest at once.
 *
 * A bounded knapsack by dynamic programming over whole lengths; a piece that may be taken several times enters as
 * packs of 1, 2, 4 ... Lengths and capacity are whole numbers. Work and memory grow as packs x capacity.
 * Source: S. Martello and P. Toth, Knapsack Problems (1990), section 3.2 and 2.6.
 */
export class BestFill {
  private readonly capacity: number;
  private readonly best: Float64Array;
  private taken = new Uint8Array(0);
  private packPiece: number[] = [];
  private packLength: number[] = [];
  private packTimes: number[] = [];

  constructor(capacity: number) {
    this.capacity = capacity;
    this.best = new Float64Array(capacity + 1);
  }

  /** Solves for the given values; pieces of no value are not taken. `most[i]`: how often piece i may be taken. */
  solve(lengths: ArrayLike<number>, values: ArrayLike<number>, most: ArrayLike<number>): void {
    const { capacity, best } = this;
    best.fill(0);
    this.packPiece = [];
    this.packLength = [];
    this.packTimes = [];
    for (let piece = 0; piece < lengths.length; piece++) {
      if ((values[piece] as number) <= 0) continue;
      const length = lengths[piece] as number;
      let left = Math.min(most[piece] as number, Math.floor(capacity / length));
      for (let times = 1; left > 0; times *= 2) {
        const now = Math.min(times, left);
        left -= now;
        this.packPiece.push(piece);
        this.packLength.push(now * length);
        this.packTimes.push(now);
      }
    }
    const row = capacity + 1;
    const cells = this.packPiece.length * row;
    if (this.taken.length < cells) this.taken = new Uint8Array(cells);
    else this.taken.fill(0, 0, cells);
    for (let pack = 0; pack < this.packPiece.length; pack++) {
      const length = this.packLength[pack] as number;
      const value = (this.packTimes[pack] as number) * (values[this.packPiece[pack] as number] as number);
      const base = pack * row;
      for (let room = capacity; room >= length; room--) {
        const candidate = (best[room - length] as number) + value;
        if (candidate > (best[room] as number) + 1e-12) {
          best[room] = candidate;
          this.taken[base + room] = 1;
        }
      }
    }
  }

  /** Value of the best fill of a length. */
  valueAt(length: number): number {
    return this.best[length] as number;
  }

  /** The best fill of a length: per piece index, how many. */
  cutsAt(length: number): Map<number, number> {
    const cuts = new Map<number, number>();
    let room = length;
    for (let pack = this.packPiece.length - 1; pack >= 0; pack--) {
      if (this.taken[pack * (this.capacity + 1) + room] === 0) continue;
      const piece = this.packPiece[pack] as number;
      cuts.set(piece, (cuts.get(piece) ?? 0) + (this.packTimes[pack] as number));
      room -= this.packLength[pack] as number;
    }
    return cuts;
  }
}
