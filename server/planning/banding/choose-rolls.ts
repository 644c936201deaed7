import { LAST_ROLLS_TRIED, MOST_ROLLS_TRIED, SAME_LENGTH_MM } from './constants.ts';
import { fillRolls, type RollPattern, type StripGroup } from './fill-rolls.ts';

/** A roll size that can be bought. */
export interface RollOffer {
  readonly packId: string;
  readonly label: string;
  readonly lengthMm: number;
  /** Whole minor units; null when the price is not known. */
  readonly priceMinor: number | null;
}

export interface RollChoice {
  readonly rolls: readonly { readonly offer: RollOffer; readonly pattern: RollPattern }[];
  /** Sum of the prices; null when they are not known. */
  readonly costMinor: number | null;
  readonly boughtMm: number;
  readonly rollCount: number;
}

/**
 * Which rolls are bought for these strips, and what is cut from each?
 *
 * Strips are never joined. Every size that holds all strips is tried alone, longest strips first; then mixes of two
 * sizes, in which the last rolls of one size (all of them on small jobs) are replaced by another, or the strips too
 * long for a size get the fewest rolls of a longer one and the others share what is left of those. The cheapest wins;
 * where no price is known, the fewest metres; then fewer metres, then fewer rolls. The result is a good choice, not a
 * proven least one: mixes of three sizes, and packings better than longest-first, are not searched.
 *
 * `groups`: strips, lengths in mm falling, none longer than the longest offer. `offers`: at least one; all priced in
 * one currency, or none. Result: the rolls in cutting order. Source of the packing: `fillRolls`. A rule of ours.
 *
 * Example: 110 m in short strips, 25 m at 10 or 100 m at 30: one of each (40), against 5 x 25 m (50) or 2 x 100 m (60).
 */
export function chooseRolls(groups: readonly StripGroup[], offers: readonly RollOffer[]): RollChoice {
  const longestMm = groups[0]?.lengthMm ?? 0;
  if (!offers.some(({ lengthMm }) => holds(lengthMm, longestMm)))
    throw new RangeError(`chooseRolls: no roll holds a strip of ${longestMm} mm`);
  const alone = offers.map((offer) => ({ offer, ...fillRolls(groups, offer.lengthMm) }));
  const complete = alone.filter(({ left }) => left.length === 0);
  let best = complete
    .map(({ offer, patterns }) => choiceOf(patterns.map((pattern) => ({ offer, pattern }))))
    .reduce(better);
  const consider = (choice: RollChoice) => {
    best = better(best, choice);
  };
  for (const base of alone) {
    const total = base.patterns.reduce((sum, { rolls }) => sum + rolls, 0);
    const fewest = total <= MOST_ROLLS_TRIED ? 0 : total - LAST_ROLLS_TRIED;
    for (let kept = fewest; kept <= total; kept++) {
      const { first, rest } = cutOff(base.patterns, kept, base.left);
      for (const other of offers) {
        if (other === base.offer || !holds(other.lengthMm, rest[0]?.lengthMm ?? 0)) continue;
        const more = fillRolls(rest, other.lengthMm).patterns;
        consider(choiceOf([...tagged(base.offer, first), ...tagged(other, more)]));
      }
    }
    if (base.left.length === 0) continue;
    // Some strips are too long for this size: the fewest longer rolls first, filled up with shorter strips.
    for (const longer of offers) {
      if (!holds(longer.lengthMm, longestMm)) continue;
      const needed = fillRolls(base.left, longer.lengthMm).patterns.reduce(
        (sum, { rolls }) => sum + rolls,
        0,
      );
      const start = fillRolls(groups, longer.lengthMm, needed);
      const more = fillRolls(start.left, base.offer.lengthMm);
      if (more.left.length === 0)
        consider(choiceOf([...tagged(longer, start.patterns), ...tagged(base.offer, more.patterns)]));
    }
  }
  return best;
}

function holds(rollMm: number, stripMm: number): boolean {
  return stripMm <= rollMm + SAME_LENGTH_MM;
}

function tagged(offer: RollOffer, patterns: readonly RollPattern[]) {
  return patterns.map((pattern) => ({ offer, pattern }));
}

function choiceOf(rolls: RollChoice['rolls']): RollChoice {
  let costMinor: number | null = 0;
  let boughtMm = 0;
  let rollCount = 0;
  for (const { offer, pattern } of rolls) {
    costMinor =
      costMinor === null || offer.priceMinor === null ? null : costMinor + pattern.rolls * offer.priceMinor;
    boughtMm += pattern.rolls * offer.lengthMm;
    rollCount += pattern.rolls;
  }
  return { rolls, costMinor, boughtMm, rollCount };
}

function better(one: RollChoice, other: RollChoice): RollChoice {
  const priced = one.costMinor !== null && other.costMinor !== null;
  const difference =
    (priced ? (other.costMinor as number) - (one.costMinor as number) : 0) ||
    beyondNoise(other.boughtMm - one.boughtMm) ||
    other.rollCount - one.rollCount;
  return difference < 0 ? other : one;
}

function beyondNoise(differenceMm: number): number {
  return Math.abs(differenceMm) <= SAME_LENGTH_MM ? 0 : differenceMm;
}

/** The first `kept` rolls, and the strips of the others together with those that were left over, longest first. */
function cutOff(
  patterns: readonly RollPattern[],
  kept: number,
  left: readonly StripGroup[],
): { readonly first: readonly RollPattern[]; readonly rest: readonly StripGroup[] } {
  const first: RollPattern[] = [];
  const counts = new Map(left.map(({ lengthMm, count }) => [lengthMm, count]));
  let room = kept;
  for (const pattern of patterns) {
    const taken = Math.min(room, pattern.rolls);
    room -= taken;
    if (taken > 0) first.push({ ...pattern, rolls: taken });
    const released = pattern.rolls - taken;
    if (released === 0) continue;
    for (const { lengthMm, count } of pattern.cuts)
      counts.set(lengthMm, (counts.get(lengthMm) ?? 0) + released * count);
  }
  const rest = [...counts].map(([lengthMm, count]) => ({ lengthMm, count }));
  return { first, rest: rest.sort((one, other) => other.lengthMm - one.lengthMm) };
}
