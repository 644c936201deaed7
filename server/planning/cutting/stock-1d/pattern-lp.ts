/**
 * The linear relaxation of cutting stock: how often to use each known pattern at least cost, shares allowed.
 *
 * Rows are pieces (at least the demand) and limited stocks (at most the limit). Columns are patterns; surplus and slack
 * columns close the rows. Revised simplex method with an explicit inverse of the basis.
 * Source: V. Chvatal, Linear Programming (1983), chapters 7, 8 and 13 (cutting stock).
 */
export interface LpColumn {
  readonly cost: number;
  /** Piece rows first, then one row per limited stock. */
  readonly rows: readonly number[];
  readonly values: readonly number[];
  /** Index into the caller's patterns; -1 for surplus and slack. */
  readonly pattern: number;
}

const ZERO = 1e-9;
const LEAST_PIVOT = 1e-7;
const PIVOTS_BETWEEN_CHECKS = 60;
const DRIFT = 1e-7;
const SMALL_SHARE = 1e-9;
const MOST_MENDING = 2000;
/** Room for so many columns at first; it doubles. */
const FIRST_COLUMNS = 1024;

export interface LpState {
  readonly demands: readonly number[];
  readonly basis: Int32Array;
  readonly inverse: Float64Array;
  readonly shares: Float64Array;
}

export class PatternLp {
  /** What is still to be cut per piece row, and the stock left per limited stock. */
  readonly demands: number[];
  readonly pieceRows: number;
  readonly columns: LpColumn[] = [];
  /** Prices of the rows: of pieces 0 or more, of limited stocks 0 or less when optimal. */
  readonly duals: Float64Array;
  readonly shares: Float64Array;
  readonly basis: Int32Array;
  private readonly size: number;
  private readonly inverse: Float64Array;
  private readonly direction: Float64Array;
  /** The pivot row without its zeros: where, and what. */
  private readonly places: Int32Array;
  private readonly values: Float64Array;
  /** Columns that no longer fit what is left: they may not enter, and cost enough to leave. */
  private banned = new Uint8Array(FIRST_COLUMNS);
  private banCost = 0;
  private inBasis = new Uint8Array(FIRST_COLUMNS);
  private readonly closing = new Map<number, number>();
  private pivots = 0;

  /** `first`: per piece a pattern column of that piece alone, on stock without limit; limited stocks start unused. */
  constructor(demands: readonly number[], limits: readonly number[], first: readonly LpColumn[]) {
    this.pieceRows = demands.length;
    this.demands = [...demands, ...limits];
    this.size = this.demands.length;
    this.duals = new Float64Array(this.size);
    this.shares = new Float64Array(this.size);
    this.direction = new Float64Array(this.size);
    this.places = new Int32Array(this.size);
    this.values = new Float64Array(this.size);
    this.basis = new Int32Array(this.size);
    this.inverse = new Float64Array(this.size * this.size);
    for (let row = 0; row < this.size; row++) {
      const column = first[row] ?? { cost: 0, rows: [row], values: [1], pattern: -1 };
      const value = column.values[0] as number;
      this.basis[row] = this.add(column);
      this.inBasis[this.basis[row] as number] = 1;
      this.inverse[row * this.size + row] = 1 / value;
      this.shares[row] = (this.demands[row] as number) / value;
    }
    this.price();
  }

  /** Sum of shares times cost. */
  get cost(): number {
    let cost = 0;
    for (let row = 0; row < this.size; row++)
      cost += (this.shares[row] as number) * this.costOf(this.basis[row] as number);
    return cost;
  }

  private costOf(column: number): number {
    const { cost } = this.columns[column] as LpColumn;
    return this.banned[column] === 1 ? cost + this.banCost : cost;
  }

  /** Bans the columns that ask for more of a row than is left. `cost`: added to theirs while they are in the plan. */
  banUnfit(cost: number): void {
    this.banCost = cost;
    for (const [index, { pattern, rows, values }] of this.columns.entries()) {
      if (pattern < 0 || this.banned[index] === 1) continue;
      for (let at = 0; at < rows.length; at++)
        if ((values[at] as number) > (this.demands[rows[at] as number] as number)) this.banned[index] = 1;
    }
    this.price();
  }

  /** Adds a column; returns its index. */
  add(column: LpColumn): number {
    if (this.columns.length === this.inBasis.length) {
      this.inBasis = grown(this.inBasis);
      this.banned = grown(this.banned);
    }
    return this.columns.push(column) - 1;
  }

  /** Whether the surplus or slack column of a row is in the basis. */
  private isClosed(row: number): boolean {
    const column = this.closing.get(row);
    return column !== undefined && this.inBasis[column] === 1;
  }

  private worthOf(index: number): number {
    const { rows, values } = this.columns[index] as LpColumn;
    let worth = 0;
    for (let at = 0; at < rows.length; at++)
      worth += (this.duals[rows[at] as number] as number) * (values[at] as number);
    return worth;
  }

  /** Cost of the column beyond what its rows are worth; below 0 means that it would improve the plan. */
  reducedCost(column: LpColumn): number {
    let cost = column.cost;
    for (let index = 0; index < column.rows.length; index++)
      cost -= (this.duals[column.rows[index] as number] as number) * (column.values[index] as number);
    return cost;
  }

  /** The known column, surplus or slack that improves most, brought into the basis; false when none does. */
  improve(): boolean {
    let best = -1;
    let bestCost = -ZERO;
    for (let index = 0; index < this.columns.length; index++) {
      if (this.inBasis[index] === 1 || this.banned[index] === 1) continue;
      const cost = this.reducedCost(this.columns[index] as LpColumn);
      if (cost < bestCost) {
        best = index;
        bestCost = cost;
      }
    }
    let closing = -1;
    for (let row = 0; row < this.size; row++) {
      const dual = this.duals[row] as number;
      const cost = row < this.pieceRows ? dual : -dual;
      if (cost < bestCost) {
        closing = row;
        bestCost = cost;
      }
    }
    if (closing >= 0) best = this.closingColumn(closing);
    if (best < 0) return false;
    return this.enter(best);
  }

  /** The surplus column of a piece row, or the slack column of a stock row. */
  private closingColumn(row: number): number {
    let column = this.closing.get(row);
    if (column === undefined) {
      column = this.add({ cost: 0, rows: [row], values: [row < this.pieceRows ? -1 : 1], pattern: -1 });
      this.closing.set(row, column);
    }
    return column;
  }

  /** Brings a column into the basis; false when numbers are too small to do so. */
  enter(entering: number): boolean {
    const { size, direction, shares } = this;
    this.express(this.columns[entering] as LpColumn);
    // Ratio test; among ties the largest pivot keeps the numbers sound.
    let leaving = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let row = 0; row < size; row++) {
      const step = direction[row] as number;
      if (step <= LEAST_PIVOT) continue;
      const ratio = Math.max(0, shares[row] as number) / step;
      if (
        ratio < least - ZERO ||
        (ratio < least + ZERO && leaving >= 0 && step > (direction[leaving] as number))
      ) {
        least = Math.min(least, ratio);
        leaving = row;
      }
    }
    if (leaving < 0) return false;
    this.pivot(entering, leaving, Math.max(0, shares[leaving] as number) / (direction[leaving] as number));
    return true;
  }

  /** Writes the column in terms of the basis into `direction`. */
  private express(column: Pick<LpColumn, 'rows' | 'values'>): void {
    const { size, inverse, direction } = this;
    direction.fill(0);
    for (let index = 0; index < column.rows.length; index++) {
      const row = column.rows[index] as number;
      const value = column.values[index] as number;
      for (let at = 0; at < size; at++)
        direction[at] = (direction[at] as number) + (inverse[at * size + row] as number) * value;
    }
  }

  /**
   * Takes what is cut for good out of the demands and limits, then mends the plan by the dual simplex method.
   * `cut`: rows and amounts. False when no plan is left.
   */
  fix(cut: Pick<LpColumn, 'rows' | 'values'>): boolean {
    for (let index = 0; index < cut.rows.length; index++) {
      const row = cut.rows[index] as number;
      this.demands[row] = (this.demands[row] as number) - (cut.values[index] as number);
    }
    this.express(cut);
    for (let row = 0; row < this.size; row++)
      this.shares[row] = (this.shares[row] as number) - (this.direction[row] as number);
    for (let round = 0; round < MOST_MENDING; round++) {
      let leaving = -1;
      let least = -SMALL_SHARE;
      for (let row = 0; row < this.size; row++) {
        if ((this.shares[row] as number) >= least) continue;
        leaving = row;
        least = this.shares[row] as number;
      }
      if (leaving < 0) return true;
      const entering = this.mendingColumn(leaving);
      if (entering < 0) return false;
      this.express(this.columns[entering] as LpColumn);
      this.pivot(entering, leaving, (this.shares[leaving] as number) / (this.direction[leaving] as number));
    }
    return false;
  }

  /** The column that raises a negative share at the least rise of cost per unit. */
  private mendingColumn(leaving: number): number {
    const base = leaving * this.size;
    let best = -1;
    let bestRatio = Number.POSITIVE_INFINITY;
    for (let row = 0; row < this.size; row++) {
      const step = (this.inverse[base + row] as number) * (row < this.pieceRows ? -1 : 1);
      if (step >= -LEAST_PIVOT || this.isClosed(row)) continue;
      const dual = this.duals[row] as number;
      const ratio = Math.max(0, row < this.pieceRows ? dual : -dual) / -step;
      if (ratio >= bestRatio) continue;
      best = this.closingColumn(row);
      bestRatio = ratio;
    }
    for (let index = 0; index < this.columns.length; index++) {
      const column = this.columns[index] as LpColumn;
      if (column.pattern < 0 || this.inBasis[index] === 1 || this.banned[index] === 1) continue;
      let step = 0;
      for (let at = 0; at < column.rows.length; at++)
        step += (this.inverse[base + (column.rows[at] as number)] as number) * (column.values[at] as number);
      if (step >= -LEAST_PIVOT) continue;
      const ratio = Math.max(0, this.reducedCost(column)) / -step;
      if (ratio >= bestRatio) continue;
      best = index;
      bestRatio = ratio;
    }
    return best;
  }

  /** A copy of the state, to come back to. */
  save(): LpState {
    return {
      demands: this.demands.slice(),
      basis: this.basis.slice(),
      inverse: this.inverse.slice(),
      shares: this.shares.slice(),
    };
  }

  restore(state: LpState): void {
    for (let row = 0; row < this.size; row++) this.demands[row] = state.demands[row] as number;
    this.basis.set(state.basis);
    this.inverse.set(state.inverse);
    this.shares.set(state.shares);
    this.banned.fill(0);
    this.inBasis.fill(0);
    for (const column of this.basis) this.inBasis[column] = 1;
    this.price();
  }

  /** Exchanges a column of the basis; `direction` holds the entering column in terms of the basis. */
  private pivot(entering: number, leaving: number, step: number): void {
    const { size, inverse, direction, shares, duals, places, values } = this;
    const pivot = direction[leaving] as number;
    const pivotRow = leaving * size;
    const gain = this.costOf(entering) - this.worthOf(entering);
    // The pivot row is mostly zeros while the basis is young: only its other places change the inverse.
    let count = 0;
    for (let at = 0; at < size; at++) {
      const value = (inverse[pivotRow + at] as number) / pivot;
      if (value === 0) continue;
      inverse[pivotRow + at] = value;
      places[count] = at;
      values[count++] = value;
    }
    for (let row = 0; row < size; row++) {
      const factor = direction[row] as number;
      if (row === leaving || factor === 0) continue;
      const base = row * size;
      for (let index = 0; index < count; index++) {
        const at = base + (places[index] as number);
        inverse[at] = (inverse[at] as number) - factor * (values[index] as number);
      }
      shares[row] = (shares[row] as number) - factor * step;
    }
    shares[leaving] = step;
    // Prices move along the pivot row by what the entering column gains; now and then they are made anew.
    for (let index = 0; index < count; index++) {
      const at = places[index] as number;
      duals[at] = (duals[at] as number) + gain * (values[index] as number);
    }
    this.inBasis[this.basis[leaving] as number] = 0;
    this.inBasis[entering] = 1;
    this.basis[leaving] = entering;
    if (++this.pivots % PIVOTS_BETWEEN_CHECKS !== 0) return;
    if (this.drift() > DRIFT) this.reinvert();
    this.price();
  }

  private price(): void {
    const { size, inverse, duals } = this;
    duals.fill(0);
    for (let row = 0; row < size; row++) {
      const cost = this.costOf(this.basis[row] as number);
      if (cost === 0) continue;
      const base = row * size;
      for (let at = 0; at < size; at++)
        duals[at] = (duals[at] as number) + cost * (inverse[base + at] as number);
    }
  }

  /** How far the shares are from meeting the demands exactly. */
  private drift(): number {
    const sums = new Float64Array(this.size);
    for (let row = 0; row < this.size; row++) {
      const { rows, values } = this.columns[this.basis[row] as number] as LpColumn;
      for (let index = 0; index < rows.length; index++)
        sums[rows[index] as number] =
          (sums[rows[index] as number] as number) + (values[index] as number) * (this.shares[row] as number);
    }
    let most = 0;
    for (let row = 0; row < this.size; row++)
      most = Math.max(most, Math.abs((sums[row] as number) - (this.demands[row] as number)));
    return most;
  }

  /** Computes the inverse afresh from the basis columns (Gauss-Jordan with row exchange), then the shares. */
  private reinvert(): void {
    const { size, inverse } = this;
    const work = new Float64Array(size * size);
    for (let column = 0; column < size; column++) {
      const { rows, values } = this.columns[this.basis[column] as number] as LpColumn;
      for (let index = 0; index < rows.length; index++)
        work[(rows[index] as number) * size + column] = values[index] as number;
    }
    inverse.fill(0);
    for (let row = 0; row < size; row++) inverse[row * size + row] = 1;
    for (let column = 0; column < size; column++) {
      let pivotRow = column;
      for (let row = column + 1; row < size; row++)
        if (
          Math.abs(work[row * size + column] as number) > Math.abs(work[pivotRow * size + column] as number)
        )
          pivotRow = row;
      swapRows(work, size, column, pivotRow);
      swapRows(inverse, size, column, pivotRow);
      const pivot = work[column * size + column] as number;
      for (let at = 0; at < size; at++) {
        work[column * size + at] = (work[column * size + at] as number) / pivot;
        inverse[column * size + at] = (inverse[column * size + at] as number) / pivot;
      }
      for (let row = 0; row < size; row++) {
        const factor = work[row * size + column] as number;
        if (row === column || factor === 0) continue;
        for (let at = 0; at < size; at++) {
          work[row * size + at] =
            (work[row * size + at] as number) - factor * (work[column * size + at] as number);
          inverse[row * size + at] =
            (inverse[row * size + at] as number) - factor * (inverse[column * size + at] as number);
        }
      }
    }
    for (let row = 0; row < size; row++) {
      let share = 0;
      for (let at = 0; at < size; at++)
        share += (inverse[row * size + at] as number) * (this.demands[at] as number);
      this.shares[row] = share;
    }
  }
}

function grown(flags: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  const larger = new Uint8Array(2 * flags.length);
  larger.set(flags);
  return larger;
}

function swapRows(matrix: Float64Array, size: number, first: number, second: number): void {
  if (first === second) return;
  for (let at = 0; at < size; at++) {
    const kept = matrix[first * size + at] as number;
    matrix[first * size + at] = matrix[second * size + at] as number;
    matrix[second * size + at] = kept;
  }
}
