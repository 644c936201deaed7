import { AREA_DUST_M2, MINUTE_DUST } from '../constants.ts';
import type { ShopNode, ShopOrder } from './settle-shop.ts';
import type { ShopFloor } from './shop-floor.ts';
import type { ShopTask } from './shop-job.ts';
import { nextStart } from './start-ranges.ts';

/** How a part of the tree goes on: intervals to choose from for one coat, or orders that settle one conflict. */
export type ShopBranch =
  | { readonly kind: 'intervals'; readonly task: number; readonly choices: readonly number[] }
  | { readonly kind: 'orders'; readonly orders: readonly ShopOrder[] };

/**
 * What keeps the least starts of a part of the tree from being a schedule?
 *
 * @param floor filled here with the starts of the node; minutes since midnight of day 0
 * @param node settled by settleShop
 * @returns the first thing found and the ways on; null when the floor now holds a schedule that keeps every rule
 *
 * Source: minimal forbidden sets (F. J. Radermacher, Annals of Operations Research 4, 1985) for hands and rack; of dust
 * and a wet coat either may go first. Valid range: any job. Departures: none.
 */
export function shopConflict(floor: ShopFloor, { start, interval }: ShopNode): ShopBranch | null {
  const { job } = floor;
  const { tasks } = job;
  floor.clear();
  for (let index = 0; index < tasks.length; index++) {
    const task = tasks[index] as ShopTask;
    if (task.doneFrom !== null) continue;
    let chosen = interval[index] as number;
    if (task.waits === 'recoat' && chosen < 0) {
      chosen = plainInterval(index, task);
      if (chosen < 0) return { kind: 'intervals', task: index, choices: [...task.intervals.keys()] };
    }
    floor.put(index, start[index] as number, chosen);
  }
  return handsConflict() ?? dustConflict() ?? rackConflict() ?? airConflict();

  /** An interval without scuffing of its own that the least starts fall into; -1 for none. */
  function plainInterval(index: number, task: ShopTask): number {
    const own = start[index] as number;
    if (nextStart(task.ranges, own, job.stepMin, floor.closed)?.minute !== own) return -1;
    const coat = tasks[task.coatBefore] as ShopTask;
    const at = task.coatBefore;
    const times = coat.intervals[floor.interval[at] as number]?.scuffed ? coat.scuffedTimes : coat.times;
    const last = coat.doneTo ?? (floor.start[at] as number) + times.layToMin;
    const stroke = own + task.times.layFromMin;
    const sanded = task.sandingBetween < 0 ? stroke : (floor.start[task.sandingBetween] as number);
    const isHistory = tasks[task.sandingBetween]?.doneFrom != null;
    return task.intervals.findIndex(({ opens, closes, scuffed }) => {
      if (scuffed) return false;
      const opened = opens(last) - MINUTE_DUST;
      if (stroke < opened || (sanded < opened && !isHistory)) return false;
      return closes === null || stroke <= closes(floor.wetFrom[at] as number) + MINUTE_DUST;
    });
  }

  function handsConflict(): ShopBranch | null {
    const { handsFrom, handsTo } = floor;
    for (let index = 0; index < tasks.length; index++) {
      const moment = handsFrom[index] as number;
      if (moment >= (handsTo[index] as number) || moment < job.startMinute) continue;
      const busy = [index];
      for (let other = 0; other < tasks.length; other++)
        if (other !== index && (handsFrom[other] as number) <= moment && (handsTo[other] as number) > moment)
          busy.push(other);
      if (busy.length > job.hands) return between('hands', busy.slice(0, job.hands + 1));
    }
    return null;
  }

  function dustConflict(): ShopBranch | null {
    if (job.sandsApart) return null;
    const { sandFrom, sandTo, wetFrom, wetTo } = floor;
    for (let sanding = 0; sanding < tasks.length; sanding++) {
      const from = sandFrom[sanding] as number;
      const to = sandTo[sanding] as number;
      if (from >= to || to <= job.startMinute) continue;
      for (let wet = 0; wet < tasks.length; wet++) {
        if (wet === sanding || !tasks[wet]?.isCoat) continue;
        if ((wetFrom[wet] as number) >= to || (wetTo[wet] as number) - MINUTE_DUST <= from) continue;
        const orders: ShopOrder[] = [
          { kind: 'wet', first: wet, second: sanding },
          { kind: 'sand', first: sanding, second: wet },
        ];
        return { kind: 'orders', orders: from < (wetFrom[wet] as number) ? orders.reverse() : orders };
      }
    }
    return null;
  }

  function rackConflict(): ShopBranch | null {
    if (job.rackM2 === Number.POSITIVE_INFINITY) return null;
    const { wetFrom, rackTo } = floor;
    const area = (index: number): number => job.chains[(tasks[index] as ShopTask).chain]?.footprintM2 ?? 0;
    for (let index = 0; index < tasks.length; index++) {
      if (!tasks[index]?.isCoat || tasks[index]?.doneFrom !== null) continue;
      const moment = wetFrom[index] as number;
      const set = [index];
      let taken = area(index);
      for (let other = 0; other < tasks.length && taken <= job.rackM2 + AREA_DUST_M2; other++) {
        if (other === index || !tasks[other]?.isCoat || tasks[other]?.chain === tasks[index]?.chain) continue;
        if ((wetFrom[other] as number) > moment || (rackTo[other] as number) - MINUTE_DUST <= moment)
          continue;
        set.push(other);
        taken += area(other);
      }
      if (taken > job.rackM2 + AREA_DUST_M2) return between('rack', set);
    }
    return null;
  }

  /** Two coats whose first strokes are too near for the air: either may go first. */
  function airConflict(): ShopBranch | null {
    if (job.apartMin === 0) return null;
    const { wetFrom } = floor;
    for (let one = 0; one < tasks.length; one++) {
      if (!tasks[one]?.hasVapour) continue;
      for (let other = one + 1; other < tasks.length; other++) {
        if (!tasks[other]?.hasVapour) continue;
        if (tasks[one]?.doneFrom !== null && tasks[other]?.doneFrom !== null) continue;
        const gap = (wetFrom[other] as number) - (wetFrom[one] as number);
        if (Math.abs(gap) >= job.apartMin) continue;
        const orders: ShopOrder[] = [
          { kind: 'air', first: one, second: other },
          { kind: 'air', first: other, second: one },
        ];
        return { kind: 'orders', orders: gap < 0 ? orders.reverse() : orders };
      }
    }
    return null;
  }

  /** Some one of the set is over before some other begins. The least delay first. */
  function between(kind: 'hands' | 'rack', set: readonly number[]): ShopBranch {
    const from = kind === 'hands' ? floor.handsFrom : floor.wetFrom;
    const to = kind === 'hands' ? floor.handsTo : floor.rackTo;
    const delay = ({ first, second }: ShopOrder): number => (to[first] as number) - (from[second] as number);
    const orders = set
      .flatMap((first) => set.map((second): ShopOrder => ({ kind, first, second })))
      .filter(({ first, second }) => first !== second);
    return { kind: 'orders', orders: orders.sort((left, right) => delay(left) - delay(right)) };
  }
}
