import type { StockLayout } from '../../plan-output.ts';
import { type Blank, laidSize } from '../blank.ts';
import {
  BOUND_EFFORT,
  FIT_TOLERANCE_MM,
  GRID_PER_MM,
  MOST_PIECES_SEARCHED,
  MOST_SEARCH_PLACES,
  MOST_SEARCH_STEPS,
  SEARCH_WORK,
} from '../constants.ts';
import { usableSize } from '../fit-problem.ts';
import { countLayouts, type LaidBlanks, offerPlace } from '../laid-blanks.ts';
import { matchNode } from '../match-node.ts';
import type { StockOffer } from '../stock-offer.ts';
import { cutTree } from './cut-tree.ts';
import { gatherOffcut } from './gather-offcut.ts';
import type { OpenSheet } from './open-sheet.ts';
import type { JobPiece, SheetJob } from './sheet-job.ts';
import { costOf, SheetSearch } from './sheet-search.ts';
import { sheetsBound } from './sheets-bound.ts';
import { LEAF, type SliceNode } from './slicing-tree.ts';
import { startSheets } from './start-sheets.ts';

const MM2_PER_M2 = 1_000_000;
/** Start of the random numbers: any fixed number will do, so that the same parts get the same plan. */
const SEED = 1;

/**
 * A guillotine cutting plan for the blanks of one material.
 *
 * `blanks`: each fits at least one offer to buy. `offers`: stock, `costs`: what one of each is reckoned at (any unit, 0
 * for stock on hand). `kerfMm`; `effort`: 1 is what an edit can wait for.
 * Result: the layouts, equal ones counted, and the lower bounds. Same input, same plan.
 */
export function layBlanks(
  blanks: readonly Blank[],
  offers: readonly StockOffer[],
  costs: readonly number[],
  options: { readonly kerfMm: number; readonly effort: number; readonly stages: number | null },
): LaidBlanks {
  if (blanks.length === 0) return { layouts: [], boundCost: 0, boundStocks: 0, cost: 0, netM2: 0 };
  const { job, owners } = jobOf(blanks, offers, costs, options);
  const bound = sheetsBound(job, BOUND_EFFORT);
  const search = new SheetSearch(job, startSheets(job), bound.cost, SEED);
  search.run(stepsFor(blanks, options.effort), options.effort * MOST_SEARCH_PLACES);
  const few = blanks.reduce((sum, blank) => sum + blank.count, 0) <= MOST_PIECES_SEARCHED;
  const sheets = few ? gatherOffcut(job, search.best) : search.best;
  return {
    layouts: layoutsOf(sheets, offers, owners, options),
    boundCost: bound.cost,
    boundStocks: bound.stocks,
    cost: costOf(job, sheets),
    netM2: blanks.reduce((sum, blank) => sum + blank.lengthMm * blank.widthMm * blank.count, 0) / MM2_PER_M2,
  };
}

/** The job on the grid, equal pieces joined, and for each piece kind the blanks it stands for. */
function jobOf(
  blanks: readonly Blank[],
  offers: readonly StockOffer[],
  costs: readonly number[],
  { kerfMm, stages }: { readonly kerfMm: number; readonly stages: number | null },
): { job: SheetJob; owners: Blank[][] } {
  const onGrid = (mm: number): number => Math.round((mm + kerfMm) * GRID_PER_MM);
  const kinds = new Map<string, number>();
  const pieces: (JobPiece & { count: number })[] = [];
  const owners: Blank[][] = [];
  for (const blank of blanks) {
    const laid = laidSize(blank);
    const length = onGrid(laid.lengthMm);
    const width = onGrid(laid.widthMm);
    const turnable = blank.grain === 'free';
    const inner = blank.match?.along;
    const key = `${length} ${width} ${turnable} ${inner}`;
    let kind = kinds.get(key);
    if (kind === undefined) {
      kind =
        pieces.push({ length, width, turnable, count: 0, ...(inner === undefined ? {} : { inner }) }) - 1;
      kinds.set(key, kind);
      owners.push([]);
    }
    (pieces[kind] as { count: number }).count += blank.count;
    (owners[kind] as Blank[]).push(blank);
  }
  const stocks = offers.map((offer, index) => ({
    length: onGrid(offer.lengthMm - 2 * offer.trimMm + FIT_TOLERANCE_MM),
    width: onGrid(offer.widthMm - 2 * offer.trimMm + FIT_TOLERANCE_MM),
    cost: costs[index] as number,
    limit: offer.limit,
  }));
  return { job: { pieces, stocks, ...(stages === null ? {} : { stages }) }, owners };
}

function layoutsOf(
  sheets: readonly OpenSheet[],
  offers: readonly StockOffer[],
  owners: readonly Blank[][],
  { kerfMm, stages }: { readonly kerfMm: number; readonly stages: number | null },
): StockLayout[] {
  // Hand the pieces out in order, one row of the part list after another.
  const next = owners.map(() => ({ owner: 0, given: 0 }));
  const ownerOf = new Map<SliceNode, Blank>();
  for (const sheet of sheets) {
    for (const node of sheet.nodes) {
      if (node.axis !== LEAF) continue;
      const place = next[node.piece] as { owner: number; given: number };
      const blank = (owners[node.piece] as Blank[])[place.owner] as Blank;
      ownerOf.set(node, blank);
      place.given++;
      if (place.given === blank.count) {
        place.owner++;
        place.given = 0;
      }
    }
  }
  return countLayouts(
    sheets.map((sheet) => {
      const offer = offers[sheet.stock] as StockOffer;
      const { lengthMm, widthMm } = usableSize(offer);
      const size = { lengthMm, widthMm, kerfMm, mostStages: stages ?? Infinity };
      const cut = cutTree(sheet.root as SliceNode, size, (node) => {
        const blank = ownerOf.get(node) as Blank;
        return blank.match === undefined ? partNode(node, blank) : matchNode(blank, kerfMm);
      });
      return { place: offerPlace(offer), cut, times: 1 };
    }),
  );
}

function partNode(node: SliceNode, blank: Blank): ReturnType<Parameters<typeof cutTree>[2]> {
  const laid = laidSize(blank);
  return {
    type: 'part',
    partId: blank.partId,
    turned: (blank.grain === 'across') !== node.turned,
    lengthMm: node.turned ? laid.widthMm : laid.lengthMm,
    widthMm: node.turned ? laid.lengthMm : laid.widthMm,
  };
}

/** Search steps: fewer for long lists, none for very long ones. */
function stepsFor(blanks: readonly Blank[], effort: number): number {
  const pieces = blanks.reduce((sum, blank) => sum + blank.count, 0);
  if (pieces > MOST_PIECES_SEARCHED * effort) return 0;
  return Math.floor(effort * Math.min(MOST_SEARCH_STEPS, SEARCH_WORK / Math.max(1, pieces)));
}
