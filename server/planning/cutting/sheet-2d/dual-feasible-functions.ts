/** A function of a length that never makes lengths laid end to end longer than what they were laid in. */
export type DualFeasible = (length: number) => number;

/** How many of the Fekete-Schepers step functions are tried: beyond, they hardly ever give the best bound. */
const STEP_FUNCTIONS = 8;

/**
 * Functions f with f(a) + f(b) <= f(a + b): if pieces fit a stock, so do their images fit the stock's image. Lengths
 * blown up this way make the area bound count pieces that cannot share a sheet.
 *
 * `most`: the longest stock in this direction. `lengths`: piece lengths in this direction. Both in one unit.
 * `limit`: at most this many functions, the plainest first.
 * Result: the functions, the first one being the length itself.
 * Source: S. P. Fekete and J. Schepers, "New classes of fast lower bounds for bin packing problems", Mathematical
 * Programming 91 (2001): step functions u(k) and thresholds U(epsilon); J. Carlier, F. Clautiaux and A. Moukrim, "New
 * reduction procedures and lower bounds for the two-dimensional bin packing problem with fixed orientation",
 * Computers & Operations Research 34 (2007): f1(k), here `halves`.
 */
export function dualFeasibleFunctions(
  most: number,
  lengths: readonly number[],
  limit: number,
): DualFeasible[] {
  const functions: DualFeasible[] = [(length) => length];
  for (let steps = 1; steps <= STEP_FUNCTIONS; steps++) functions.push(stepped(most, steps));
  const half = [...new Set(lengths.filter((length) => 2 * length <= most))].sort(
    (left, right) => left - right,
  );
  const room = Math.max(0, limit - functions.length);
  const stride = Math.max(1, (2 * half.length) / Math.max(1, room));
  for (let place = 0; place < half.length; place += stride) {
    const cut = half[Math.floor(place)] as number;
    functions.push(thresholded(most, cut), halved(most, cut));
  }
  return functions.slice(0, Math.max(1, limit));
}

/** u(k): exact multiples of most / (k + 1) stay, all others fall to the next lower step of most / k. */
function stepped(most: number, k: number): DualFeasible {
  return (length) => {
    const steps = Math.floor(((k + 1) * length) / most);
    return steps * most === (k + 1) * length ? length : (steps * most) / k;
  };
}

/** Pieces shorter than `cut` count nothing; those that leave less than `cut` count as the whole. */
function thresholded(most: number, cut: number): DualFeasible {
  return (length) => {
    if (length > most - cut) return most;
    return length < cut ? 0 : length;
  };
}

/** Counts in units of `cut`, the larger half by what it leaves. */
function halved(most: number, cut: number): DualFeasible {
  const whole = Math.floor(most / cut);
  return (length) => {
    if (2 * length > most) return 2 * (whole - Math.floor((most - length) / cut));
    return 2 * length === most ? whole : 2 * Math.floor(length / cut);
  };
}
