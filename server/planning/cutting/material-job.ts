import type { Problem } from '../problem.ts';
import type { ProjectInput } from '../project-input.ts';
import { type Blank, laidSize } from './blank.ts';
import { fitProblem, fitsOffer } from './fit-problem.ts';
import { fullWidthBlanks } from './full-width-blanks.ts';
import { kerfProblem } from './kerf-problem.ts';
import { matchBlanks } from './match-blanks.ts';
import type { MaterialBlanks } from './material-blanks.ts';
import type { StockOffer } from './stock-offer.ts';
import { stockOffers } from './stock-offers.ts';

/** What is cut from what, at which cost: everything the cutting plan of one material hangs on but the kerf. */
export interface MaterialJob {
  /** Each fits at least one offer to buy. */
  readonly blanks: readonly Blank[];
  readonly offers: readonly StockOffer[];
  /** What one of each offer is reckoned at: minor units, or mm2 where the plan saves area. */
  readonly costs: readonly number[];
  /** A price is missing. */
  readonly unpriced: boolean;
  /** Costs are areas, since no stock has a price above 0. */
  readonly byArea: boolean;
  /** Boards all of whose blanks are as wide as the board: cuts to length only. */
  readonly toLengthOnly: boolean;
  /** Rows that fit no stock to buy. */
  readonly leftOut: number;
  /** At most so many stages of cuts; null: any number. */
  readonly stages: number | null;
}

/**
 * The cutting job of one sheet or board product.
 *
 * `material`: the blanks, mm. `input`: settings, stock on hand. Result: the job, null where no size of the material is
 * known, and the problems of parts and stock. No source: grouping; the rules are those of the functions it calls.
 */
export function materialJob(
  material: MaterialBlanks,
  input: ProjectInput,
): { job: MaterialJob | null; problems: Problem[] } {
  const { product } = material;
  const { offers, problems } = stockOffers(product, input);
  const toBuy = offers.filter((offer) => offer.packId !== null);
  const [first] = toBuy;
  if (first === undefined) return { job: null, problems };
  const all = product.kind === 'board' ? fullWidthBlanks(material.blanks, first.widthMm) : material.blanks;
  const fitting: Blank[] = [];
  for (const blank of all) {
    if (toBuy.some((offer) => fitsOffer(blank, offer))) fitting.push(blank);
    else problems.push(fitProblem(blank, product, toBuy, input.settings));
    const thin = kerfProblem(blank, input.settings);
    if (thin !== null) problems.push(thin);
  }
  const matched = matchBlanks(fitting, input, product, toBuy);
  problems.push(...matched.problems);
  const { blanks } = matched;

  // Without prices, or when stock is free, the plan saves area instead of money.
  const unpriced = toBuy.some((offer) => offer.priceMinor === null);
  const byArea = unpriced || toBuy.every((offer) => offer.priceMinor === 0);
  const costs = offers.map((offer) => {
    if (offer.packId === null) return 0;
    return byArea ? Math.round(offer.lengthMm * offer.widthMm) : (offer.priceMinor ?? 0);
  });
  const toLengthOnly =
    product.kind === 'board' && blanks.every((blank) => laidSize(blank).widthMm === first.widthMm);
  const leftOut = all.length - fitting.length;
  const stages = input.settings.cutStages;
  return { job: { blanks, offers, costs, unpriced, byArea, toLengthOnly, leftOut, stages }, problems };
}
