import type { RollPlan } from '../../server/planning/plan-output.ts';
import { barScale } from './bar-scale.ts';

/** Equal strips that lie side by side on a roll. Positions are percent of the longest roll shown. */
export interface RollSegment {
  readonly key: string;
  readonly partId: string | null;
  readonly stripId: string | null;
  readonly lengthMm: number;
  readonly count: number;
  readonly start: number;
  readonly width: number;
  /** Where one strip ends and the next begins inside the segment. */
  readonly cuts: readonly number[];
}

export interface DrawnRoll {
  readonly id: string;
  readonly width: number;
  readonly segments: readonly RollSegment[];
  readonly left: { readonly start: number; readonly width: number };
}

/** Rolls drawn to one scale, strips in the order they are cut, what is left at the end. */
export function drawnRolls(rolls: readonly RollPlan[]): readonly DrawnRoll[] {
  const scale = barScale(Math.max(0, ...rolls.map((roll) => roll.lengthMm)));
  return rolls.map((roll) => {
    let usedMm = 0;
    const segments = roll.strips.map((strip, index): RollSegment => {
      const startMm = usedMm;
      usedMm += strip.lengthMm * strip.count;
      return {
        key: `${roll.id}/${index}`,
        partId: strip.partId,
        stripId: strip.stripId,
        lengthMm: strip.lengthMm,
        count: strip.count,
        start: scale(startMm),
        width: scale(usedMm) - scale(startMm),
        cuts: Array.from({ length: strip.count - 1 }, (_, cut) =>
          scale(startMm + strip.lengthMm * (cut + 1)),
        ),
      };
    });
    return {
      id: roll.id,
      width: scale(roll.lengthMm),
      segments,
      left: { start: scale(usedMm), width: scale(roll.lengthMm) - scale(usedMm) },
    };
  });
}
