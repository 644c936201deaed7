import type { CutNode, StockLayout } from '../../plan-output.ts';
import type { FoundSheet } from '../../project-input.ts';
import { type Blank, laidSize } from '../blank.ts';
import { usableSize } from '../fit-problem.ts';
import { countLayouts, offerPlace } from '../laid-blanks.ts';
import { matchNode } from '../match-node.ts';
import { cutTree } from '../sheet-2d/cut-tree.ts';
import { LEAF, type SliceNode } from '../sheet-2d/slicing-tree.ts';
import type { StockOffer } from '../stock-offer.ts';
import type { AskedQuestion } from './cutting-question.ts';
import { treeOf } from './found-tree.ts';

/**
 * A found plan as layouts of this part list: pieces are handed out to the rows in their order, stocks to the offers.
 *
 * `asked`: the question with its rows and offers. `sheets`: a plan without fault, see foundFault. Result: the layouts,
 * mm, equal ones counted. No source: the same pieces under the names of their rows.
 */
export function foundLayouts(asked: AskedQuestion, sheets: readonly FoundSheet[]): StockLayout[] {
  const { question, owners, offers } = asked;
  const nextBlank = owners.map((rows) => dealer(rows, ({ count }) => count));
  const nextOffer = offers.map((some) => dealer(some, ({ limit }) => limit));
  const cutSheets: { place: ReturnType<typeof offerPlace>; cut: CutNode; times: number }[] = [];
  for (const { stock, count, cut } of sheets) {
    for (let copy = 0; copy < count; copy++) {
      const offer = (nextOffer[stock] as () => StockOffer)();
      const root = treeOf(cut, question.job.pieces);
      const blankOf = new Map<SliceNode, Blank>();
      for (const each of leavesOf(root)) blankOf.set(each, (nextBlank[each.piece] as () => Blank)());
      const size = {
        ...usableSize(offer),
        kerfMm: question.kerfMm,
        mostStages: question.job.stages ?? Number.POSITIVE_INFINITY,
      };
      const tree = cutTree(root, size, (node) => {
        const blank = blankOf.get(node) as Blank;
        return blank.match === undefined
          ? partNode(node, blank, question.toLengthOnly)
          : matchNode(blank, question.kerfMm);
      });
      cutSheets.push({ place: offerPlace(offer), cut: tree, times: 1 });
    }
  }
  return countLayouts(cutSheets);
}

/** Gives out each item as often as it is there, in order. */
function dealer<Item>(items: readonly Item[], numberOf: (item: Item) => number): () => Item {
  let at = 0;
  let given = 0;
  return () => {
    while (given >= numberOf(items[at] as Item)) {
      at++;
      given = 0;
    }
    given++;
    return items[at] as Item;
  };
}

function leavesOf(node: SliceNode): SliceNode[] {
  return node.axis === LEAF ? [node] : node.kids.flatMap(leavesOf);
}

function partNode(
  { turned: flipped }: SliceNode,
  blank: Blank,
  toLengthOnly: boolean,
): Extract<CutNode, { type: 'part' }> {
  const laid = laidSize(blank);
  // Pieces that may turn lie with the longer side along the stock unless they are turned.
  const upright = blank.grain === 'free' && !toLengthOnly && laid.lengthMm < laid.widthMm;
  const swapped = flipped !== upright;
  return {
    type: 'part',
    partId: blank.partId,
    turned: (blank.grain === 'across') !== swapped,
    lengthMm: swapped ? laid.widthMm : laid.lengthMm,
    widthMm: swapped ? laid.lengthMm : laid.widthMm,
  };
}
