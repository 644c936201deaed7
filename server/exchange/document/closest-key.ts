/** Most single-letter slips between what was written and what was meant. */
const MOST_SLIPS = 3;

/**
 * Which known key was probably meant by an unknown one? The one with the fewest single-letter slips, capitals aside,
 * and at most three; null when none is near. The count is the optimal string alignment distance: letters added, left
 * out, changed or swapped with their neighbour.
 */
export function closestKey(written: string, known: readonly string[]): string | null {
  let best: string | null = null;
  let fewest = Math.min(MOST_SLIPS, Math.floor(written.length / 2)) + 1;
  for (const key of known) {
    const slips = distance(written.toLowerCase(), key.toLowerCase());
    if (slips >= fewest) continue;
    fewest = slips;
    best = key;
  }
  return best;
}

function distance(a: string, b: string): number {
  // A longer text than any key plus the slips allowed cannot be near; this also bounds the table below.
  if (Math.abs(a.length - b.length) > MOST_SLIPS) return MOST_SLIPS + 1;
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, column) => column)];
  const cellAt = (row: number, column: number): number => rows[row]?.[column] ?? 0;
  for (let row = 1; row <= a.length; row++) {
    rows.push([row]);
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1];
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      rows[row]?.push(
        Math.min(
          cellAt(row - 1, column) + 1,
          cellAt(row, column - 1) + 1,
          cellAt(row - 1, column - 1) + (same ? 0 : 1),
          swapped ? cellAt(row - 2, column - 2) + 1 : Number.POSITIVE_INFINITY,
        ),
      );
    }
  }
  return cellAt(a.length, b.length);
}
