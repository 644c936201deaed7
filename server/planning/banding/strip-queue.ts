import type { RollStrip } from '../plan-output.ts';
import { SAME_LENGTH_MM } from './constants.ts';
import type { StripGroup } from './fill-rolls.ts';

/** Strips of known length waiting to be cut, grouped by length, each group knowing whose strips they are. */
export interface StripQueue {
  /** Longest first. */
  readonly groups: readonly StripGroup[];
  /** Takes `count` strips of a group's length, in the order of the part list. */
  readonly take: (lengthMm: number, count: number) => RollStrip[];
  /** What has not been taken. */
  readonly waiting: () => RollStrip[];
}

/**
 * Which strips of equal length belong together, and whose are they?
 *
 * `strips`: in the order of the part list, spares last. Result: groups by falling length (lengths equal to a
 * millionth of a millimetre are one), from which strips are taken first come, first served. No source: a definition.
 *
 * Example: fronts of 650 mm of two rows are one group; the first taken are the first row's.
 */
export function stripQueue(strips: readonly RollStrip[]): StripQueue {
  const byLength = new Map<number, { lengthMm: number; rows: RollStrip[]; next: number; used: number }>();
  for (const strip of strips) {
    if (strip.count === 0) continue;
    const key = Math.round(strip.lengthMm / SAME_LENGTH_MM);
    const group = byLength.get(key);
    if (group === undefined) byLength.set(key, { lengthMm: strip.lengthMm, rows: [strip], next: 0, used: 0 });
    else group.rows.push(strip);
  }
  const sorted = [...byLength.values()].sort((one, other) => other.lengthMm - one.lengthMm);
  const take = (lengthMm: number, count: number): RollStrip[] => {
    const group = byLength.get(Math.round(lengthMm / SAME_LENGTH_MM));
    if (group === undefined) throw new RangeError(`stripQueue: no strips of ${lengthMm} mm`);
    const taken: RollStrip[] = [];
    for (let open = count; open > 0; ) {
      const row = group.rows[group.next];
      if (row === undefined) throw new RangeError(`stripQueue: too few strips of ${lengthMm} mm`);
      const some = Math.min(open, row.count - group.used);
      taken.push({ ...row, count: some });
      open -= some;
      group.used += some;
      if (group.used === row.count) {
        group.next++;
        group.used = 0;
      }
    }
    return taken;
  };
  const waiting = () =>
    sorted.flatMap(({ rows, next, used }) =>
      rows.slice(next).map((row, place) => (place === 0 ? { ...row, count: row.count - used } : row)),
    );
  const groups = sorted.map(({ lengthMm, rows }) => ({
    lengthMm,
    count: rows.reduce((sum, { count }) => sum + count, 0),
  }));
  return { groups, take, waiting };
}
