import { formatMetres } from '../display/format-metres.ts';
import type { RollPlan } from '../plan-output.ts';
import type { UnitSystem } from '../project-input.ts';
import { chooseRolls } from './choose-rolls.ts';
import { MM_PER_M, MOST_ROLLS_PLANNED, SAME_LENGTH_MM } from './constants.ts';
import { fillRolls, type RollPattern, type StripGroup } from './fill-rolls.ts';
import type { RollStock } from './roll-stock.ts';
import type { StripQueue } from './strip-queue.ts';

/**
 * How are the strips of one product cut from rolls: first what is on hand, then what is bought?
 *
 * `queue`: the strips, mm. `stock`: rolls on hand and on offer, mm. Result: the rolls in cutting order, each with its
 * strips and what is left of it, mm. Strips that no roll holds stay in the queue. Null, with
 * nothing taken, when it would be more rolls than are planned one by one. No source of its own: `fillRolls`
 * and `chooseRolls` name theirs.
 *
 * Example: 9 strips of 838.2 mm from a roll of 7620 mm leave 76.2 mm.
 */
export function cutRolls(queue: StripQueue, stock: RollStock, units: UnitSystem): RollPlan[] | null {
  const cuts: {
    readonly pattern: RollPattern;
    readonly roll: Pick<RollPlan, 'packId' | 'onHandId' | 'label'>;
  }[] = [];
  let open: readonly StripGroup[] = queue.groups;
  for (const { onHandId, lengthMm, count } of stock.onHand) {
    const { patterns, left } = fillRolls(open, lengthMm, count);
    const label = `${formatMetres(lengthMm / MM_PER_M, { units })} on hand`;
    cuts.push(...patterns.map((pattern) => ({ pattern, roll: { packId: null, onHandId, label } })));
    open = left;
  }
  const longestMm = Math.max(0, ...stock.offers.map(({ lengthMm }) => lengthMm));
  const fitting = open.filter(({ lengthMm }) => lengthMm <= longestMm + SAME_LENGTH_MM);
  if (fitting.length > 0)
    for (const { offer, pattern } of chooseRolls(fitting, stock.offers).rolls)
      cuts.push({ pattern, roll: { packId: offer.packId, onHandId: null, label: offer.label } });
  if (cuts.reduce((sum, { pattern }) => sum + pattern.rolls, 0) > MOST_ROLLS_PLANNED) return null;

  const rolls: RollPlan[] = [];
  for (const { pattern, roll } of cuts) {
    const usedMm = pattern.cuts.reduce((sum, { lengthMm, count }) => sum + lengthMm * count, 0);
    const leftMm = pattern.rollMm - usedMm < SAME_LENGTH_MM ? 0 : pattern.rollMm - usedMm;
    for (let copy = 0; copy < pattern.rolls; copy++) {
      const strips = pattern.cuts.flatMap(({ lengthMm, count }) => queue.take(lengthMm, count));
      rolls.push({ id: String(rolls.length + 1), ...roll, lengthMm: pattern.rollMm, strips, leftMm });
    }
  }
  return rolls;
}
