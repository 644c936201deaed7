import { COVER_TOLERANCE } from '../packs/constants.ts';
import type { BuyLine, BuyPack } from '../plan-output.ts';
import type { LedgerEntries } from './ledger-entries.ts';
import type { LineMoney } from './line-money.ts';

/**
 * What of the buy list is still to be ordered?
 *
 * @param lines of the buy list
 * @param entries the orders; a line added by hand is told by its name
 * @returns the same lines with the cost of what is not ordered yet: nothing where what is ordered covers the need, else the
 *   packs of the plan less those of the same kind that are ordered
 *
 * Source: definition.
 */
export function stillToOrder(lines: readonly BuyLine[], { orders }: LedgerEntries): readonly BuyLine[] {
  const ordered = orders.flatMap((order) => order.lines);
  return lines.map((line) => {
    const mine = ordered.filter(({ line: { productId, name } }) =>
      line.productId === null ? productId === '' && name === line.name : productId === line.productId,
    );
    const amount = mine.reduce((sum, { kept, line: { packAmount } }) => sum + kept * packAmount, 0);
    if (amount === 0) return line;
    const covered = line.toBuy.value !== null && amount + COVER_TOLERANCE >= line.toBuy.value;
    const packs = covered ? [] : line.packs.map((pack) => less(pack, mine));
    const unknown =
      !covered && (line.packs.length === 0 || packs.some(({ lineMinor }) => lineMinor === null));
    const value = unknown ? null : packs.reduce((sum, { lineMinor }) => sum + (lineMinor ?? 0), 0);
    return { ...line, packs, cost: { ...line.cost, value } };
  });
}

function less(pack: BuyPack, ordered: readonly LineMoney[]): BuyPack {
  const taken = ordered
    .filter(({ line }) => line.packId === pack.id)
    .reduce((packs, { kept }) => packs + kept, 0);
  const count = Math.max(0, pack.count - taken);
  const lineMinor = count === 0 ? 0 : pack.priceMinor === null ? null : count * pack.priceMinor;
  return { ...pack, count, lineMinor };
}
