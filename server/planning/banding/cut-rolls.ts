import { formatMetres } from '../display/format-metres.ts';
import type { RollPlan } from '../plan-output.ts';
import type { UnitSystem } from '../project-input.ts';
import { chooseRolls, type RollOffer } from './choose-rolls.ts';
import { MM_PER_M, MOST_ROLLS_PLANNED, SAME_LENGTH_MM } from './constants.ts';
import { fillRolls, type RollPattern, type StripGroup } from './fill-rolls.ts';
import { leastCostRolls, type RollCut } from './least-cost-rolls.ts';
import type { RollOnHand, RollStock } from './roll-stock.ts';
import type { StripQueue } from './strip-queue.ts';

/**
 * How are the strips of one product cut from rolls: first what is on hand, then what is bought?
 *
 * `queue`: the strips, mm. `stock`: rolls on hand and on offer, mm. Result: the rolls in cutting order, each with its
 * strips and what is left of it, mm, and whether no choice costs less. Strips that no roll holds stay in the queue. Null,
 * with nothing taken, when it would be more rolls than are planned one by one. The quick choice, leftovers
 * first, stands unless the search for least cost finds a cheaper one. No source of its own: `fillRolls`,
 * `chooseRolls` and `leastCostRolls` name theirs.
 *
 * Example: 9 strips of 838.2 mm from a roll of 7620 mm leave 76.2 mm.
 */
export function cutRolls(queue: StripQueue, stock: RollStock, units: UnitSystem): CutRolls | null {
  const cuts: CutRoll[] = [];
  let open: readonly StripGroup[] = queue.groups;
  for (const roll of stock.onHand) {
    const { patterns, left } = fillRolls(open, roll.lengthMm, roll.count);
    cuts.push(...patterns.map((pattern) => ({ pattern, roll: fromShelf(roll, units) })));
    open = left;
  }
  const longestMm = Math.max(0, ...stock.offers.map(({ lengthMm }) => lengthMm));
  const fitting = open.filter(({ lengthMm }) => lengthMm <= longestMm + SAME_LENGTH_MM);
  let cost = 0;
  if (fitting.length > 0) {
    const { rolls, costMinor, boughtMm } = chooseRolls(fitting, stock.offers);
    cost = stock.priced ? (costMinor ?? 0) : Math.round(boughtMm);
    for (const { offer, pattern } of rolls) cuts.push({ pattern, roll: fromOffer(offer) });
  }
  const least = leastCostRolls(queue.groups, stock, cost);
  const proven = least !== null && Math.min(cost, least.cost) <= least.boundCost;
  const cheaper = least !== null && least.cost < cost ? least.cuts : null;
  return planned(cheaper === null ? cuts : leastCuts(cheaper, stock, units), queue, proven);
}

export interface CutRolls {
  readonly rolls: readonly RollPlan[];
  /** No choice of rolls costs less; where no price is known, none takes fewer metres. */
  readonly proven: boolean;
}

interface CutRoll {
  readonly pattern: RollPattern;
  readonly roll: Pick<RollPlan, 'packId' | 'onHandId' | 'label'>;
}

function fromShelf({ onHandId, lengthMm }: RollOnHand, units: UnitSystem): CutRoll['roll'] {
  return { packId: null, onHandId, label: `${formatMetres(lengthMm / MM_PER_M, { units })} on hand` };
}

function fromOffer({ packId, label }: RollOffer): CutRoll['roll'] {
  return { packId, onHandId: null, label };
}

function leastCuts(cuts: readonly RollCut[], stock: RollStock, units: UnitSystem): CutRoll[] {
  return cuts.map(({ pattern, from }) => ({
    pattern,
    roll:
      'onHand' in from
        ? fromShelf(stock.onHand[from.onHand] as RollOnHand, units)
        : fromOffer(stock.offers[from.offer] as RollOffer),
  }));
}

/** Hands the strips out to the rolls one by one; null, with nothing taken, when there are too many rolls. */
function planned(cuts: readonly CutRoll[], queue: StripQueue, proven: boolean): CutRolls | null {
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
  return { rolls, proven };
}
