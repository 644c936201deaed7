import { SAME_LENGTH_MM } from './constants.ts';

/** Strips of one length that are still to be cut. */
export interface StripGroup {
  readonly lengthMm: number;
  readonly count: number;
}

/** What is cut from one roll, and how many rolls are cut alike. */
export interface RollPattern {
  readonly rolls: number;
  readonly rollMm: number;
  /** Longest first. */
  readonly cuts: readonly StripGroup[];
}

/**
 * Which strips are cut from the first rolls of one length, longest first, each from the first roll with room?
 *
 * `groups`: strips to cut, lengths falling, counts above 0. `rollMm`: length of every roll, mm. `mostRolls`: stop
 * after so many. Result: the rolls in order, equal neighbours counted, and the strips left over; strips longer than
 * a roll are left over too. Source: first fit decreasing, D. S. Johnson, "Near-optimal bin packing algorithms", MIT
 * thesis, 1973. Filling roll after roll gives the same packing as placing strip after strip: a strip goes into the
 * first roll exactly if it fits beside the longer ones already there. A roll filled like the one before needs no new
 * search while the strips last, which makes the work grow with the number of different lengths, not of strips.
 *
 * Example: 20 strips of 838.2 mm and rolls of 7620 mm: two rolls of 9, and one of 2.
 */
export function fillRolls(
  groups: readonly StripGroup[],
  rollMm: number,
  mostRolls = Number.POSITIVE_INFINITY,
): { readonly patterns: readonly RollPattern[]; readonly left: readonly StripGroup[] } {
  if (!(rollMm > 0)) throw new RangeError(`fillRolls: rollMm must be above 0 mm, got ${rollMm}`);
  const lengths = groups.map(({ lengthMm }) => lengthMm);
  const counts = groups.map(({ count }) => count);
  const nextFull = groups.map((_, place) => place);
  nextFull.push(groups.length);
  const patterns: RollPattern[] = [];
  let filled = 0;
  while (filled < mostRolls) {
    const cuts: { place: number; count: number }[] = [];
    let roomMm = rollMm;
    for (let place = firstFit(lengths, roomMm, 0); ; place = firstFit(lengths, roomMm, place + 1)) {
      place = firstWithStrips(nextFull, counts, place);
      if (place >= lengths.length) break;
      const lengthMm = lengths[place] as number;
      const count = Math.min(counts[place] as number, Math.floor((roomMm + SAME_LENGTH_MM) / lengthMm));
      cuts.push({ place, count });
      roomMm -= count * lengthMm;
    }
    if (cuts.length === 0) break;
    // The next roll is filled the same way as long as no group runs short.
    const alike = Math.min(...cuts.map(({ place, count }) => Math.floor((counts[place] as number) / count)));
    const rolls = Math.min(alike, mostRolls - filled);
    for (const { place, count } of cuts) counts[place] = (counts[place] as number) - rolls * count;
    filled += rolls;
    patterns.push({
      rolls,
      rollMm,
      cuts: cuts.map(({ place, count }) => ({ lengthMm: lengths[place] as number, count })),
    });
  }
  const left = groups.flatMap(({ lengthMm }, place) => {
    const count = counts[place] as number;
    return count > 0 ? [{ lengthMm, count }] : [];
  });
  return { patterns, left };
}

/** First place from `from` on whose length fits into the room; lengths fall. */
function firstFit(lengths: readonly number[], roomMm: number, from: number): number {
  let low = from;
  let high = lengths.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((lengths[middle] as number) <= roomMm + SAME_LENGTH_MM) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** First place from `place` on that still has strips; paths over emptied groups are shortened as they are walked. */
function firstWithStrips(nextFull: number[], counts: readonly number[], place: number): number {
  let end = place;
  while (end < counts.length && counts[end] === 0) {
    nextFull[end] = Math.max(nextFull[end] as number, end + 1);
    end = nextFull[end] as number;
  }
  for (let at = place; at < end; ) {
    const following = nextFull[at] as number;
    nextFull[at] = end;
    at = following;
  }
  return end;
}
