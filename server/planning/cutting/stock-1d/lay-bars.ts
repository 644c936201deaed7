import type { CutNode } from '../../plan-output.ts';
import { type Blank, laidSize } from '../blank.ts';
import { LEAST_OFFCUT_MM } from '../constants.ts';
import { countLayouts, type LaidBlanks, offerPlace } from '../laid-blanks.ts';
import { matchNode } from '../match-node.ts';
import type { StockOffer } from '../stock-offer.ts';
import { cutBars } from './cut-bars.ts';

const MM2_PER_M2 = 1_000_000;

/**
 * A cutting plan for blanks that are as wide as the board: cuts to length only.
 *
 * `blanks`: each at most as long as some offer to buy. `offers`: boards; `costs`: what one of each is reckoned at (any unit,
 * 0 for boards on hand). `kerfMm`; `effort`: 1 is what an edit can wait for.
 * Result: the layouts, equal ones counted, and the lower bounds. Same input, same plan.
 */
export function layBars(
  blanks: readonly Blank[],
  offers: readonly StockOffer[],
  costs: readonly number[],
  options: { readonly kerfMm: number; readonly effort: number },
): LaidBlanks {
  const { kerfMm, effort } = options;
  const plan = cutBars({
    pieces: blanks.map((blank) => ({ lengthMm: laidSize(blank).lengthMm, count: blank.count })),
    stocks: offers.map(({ lengthMm, limit }, index) => ({ lengthMm, limit, cost: costs[index] as number })),
    kerfMm,
    effort,
  });
  const layouts = countLayouts(
    plan.patterns.map(({ stock, cuts, times }) => {
      const offer = offers[stock] as StockOffer;
      const parts = cuts.flatMap(({ piece, count }) =>
        Array<Blank>(count)
          .fill(blanks[piece] as Blank)
          .map((blank) =>
            blank.match === undefined ? partNode(blank, offer.widthMm) : matchNode(blank, kerfMm),
          ),
      );
      return { place: offerPlace(offer), cut: crossCuts(parts, offer, kerfMm), times };
    }),
  );
  return {
    layouts,
    cost: plan.cost,
    boundCost: plan.boundCost,
    boundStocks: plan.boundStocks,
    netM2: blanks.reduce((sum, blank) => sum + blank.lengthMm * blank.widthMm * blank.count, 0) / MM2_PER_M2,
  };
}

function partNode(blank: Blank, widthMm: number): CutNode {
  return {
    type: 'part',
    partId: blank.partId,
    turned: blank.grain === 'across',
    lengthMm: laidSize(blank).lengthMm,
    widthMm,
  };
}

/** The parts side by side, longest first, and what is left as one offcut; see cutTree for remainders within a kerf. */
function crossCuts(parts: readonly CutNode[], { lengthMm, widthMm }: StockOffer, kerfMm: number): CutNode {
  const children = parts.slice().sort((left, right) => right.lengthMm - left.lengthMm);
  const [only] = children;
  if (children.length === 1 && only !== undefined && lengthMm - only.lengthMm <= LEAST_OFFCUT_MM) return only;
  let left = lengthMm;
  for (const child of children) left -= child.lengthMm + kerfMm;
  if (left > LEAST_OFFCUT_MM) children.push({ type: 'offcut', lengthMm: left, widthMm });
  return { type: 'split', along: 'length', lengthMm, widthMm, children };
}
