import type { CutNode, StockLayout } from '../../plan-output.ts';
import type { FoundCut, FoundSheet } from '../../project-input.ts';
import { laidSize } from '../blank.ts';
import { matchId } from '../match-blanks.ts';
import type { AskedQuestion } from './cutting-question.ts';

/**
 * The layouts of a plan in the terms of its question, as a start for a longer search.
 *
 * `asked`: the question with its rows and offers. `layouts`: a plan that answers it. Result: the sheets; null when a
 * layout holds a part or a stock that the question does not know. No source: the reverse of foundLayouts.
 */
export function foundFromLayouts(
  asked: AskedQuestion,
  layouts: readonly Pick<StockLayout, 'packId' | 'onHandId' | 'count' | 'cut'>[],
): FoundSheet[] | null {
  const pieceOf = new Map<string, { piece: number; upright: boolean; across: boolean }>();
  for (const [piece, rows] of asked.owners.entries())
    for (const blank of rows) {
      const laid = laidSize(blank);
      const turnable = asked.question.job.pieces[piece]?.turnable === true;
      pieceOf.set(blank.partId, {
        piece,
        upright: turnable && laid.lengthMm < laid.widthMm,
        across: blank.grain === 'across',
      });
    }
  const stockOf = new Map<string, number>();
  for (const [stock, offers] of asked.offers.entries())
    for (const { packId, onHandId } of offers) stockOf.set(stockKey(packId, onHandId), stock);

  const cutOf = (node: CutNode): FoundCut | null => {
    if (node.type === 'offcut') return null;
    if (node.type === 'part') {
      const known = pieceOf.get(node.partId);
      if (known === undefined) throw new UnknownPlace();
      return { piece: known.piece, turned: (node.turned !== known.across) !== known.upright };
    }
    if (node.match !== undefined) {
      const known = pieceOf.get(matchId(node.match));
      if (known === undefined) throw new UnknownPlace();
      return { piece: known.piece, turned: false };
    }
    const cuts = node.children.map(cutOf).filter((cut) => cut !== null);
    const [only] = cuts;
    if (cuts.length <= 1) return only ?? null;
    return { along: node.along, cuts };
  };
  try {
    return layouts.flatMap(({ packId, onHandId, count, cut }): FoundSheet[] => {
      const stock = stockOf.get(stockKey(packId, onHandId));
      if (stock === undefined) throw new UnknownPlace();
      const found = cutOf(cut);
      return found === null ? [] : [{ stock, count, cut: found }];
    });
  } catch (error) {
    if (error instanceof UnknownPlace) return null;
    throw error;
  }
}

class UnknownPlace extends Error {}

function stockKey(packId: string | null, onHandId: string | null): string {
  return packId === null ? `on hand ${onHandId}` : `pack ${packId}`;
}
