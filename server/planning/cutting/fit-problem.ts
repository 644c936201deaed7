import type { Problem } from '../problem.ts';
import type { Product } from '../product.ts';
import type { ProjectSettings } from '../project-input.ts';
import { type Blank, laidSize } from './blank.ts';
import { FIT_TOLERANCE_MM } from './constants.ts';
import { sizeText } from './size-text.ts';
import type { StockOffer } from './stock-offer.ts';

/** Usable size of a stock after trimming, mm. */
export function usableSize(offer: StockOffer): { lengthMm: number; widthMm: number } {
  return { lengthMm: offer.lengthMm - 2 * offer.trimMm, widthMm: offer.widthMm - 2 * offer.trimMm };
}

/** Whether the blank, lengths in mm, can be cut from the stock in a direction its grain allows. */
export function fitsOffer(blank: Blank, offer: StockOffer): boolean {
  const { lengthMm, widthMm } = laidSize(blank);
  return goesInto(lengthMm, widthMm, offer) || (blank.grain === 'free' && goesInto(widthMm, lengthMm, offer));
}

function goesInto(lengthMm: number, widthMm: number, offer: StockOffer): boolean {
  const usable = usableSize(offer);
  return lengthMm <= usable.lengthMm + FIT_TOLERANCE_MM && widthMm <= usable.widthMm + FIT_TOLERANCE_MM;
}

/**
 * The problem of a blank that no stock is large enough for, saying what would fit.
 *
 * `blank`, `offers`: sizes in mm, at least one offer. Result: a problem at the part's length or width cell.
 */
export function fitProblem(
  blank: Blank,
  product: Product,
  offers: readonly StockOffer[],
  settings: ProjectSettings,
): Problem {
  const laid = laidSize(blank);
  const largest = offers.map(usableSize).reduce((best, size) => (area(size) > area(best) ? size : best));
  const turnedFits = offers.some(
    (offer) => blank.grain !== 'free' && goesInto(laid.widthMm, laid.lengthMm, offer),
  );
  const tooLong = laid.lengthMm > largest.lengthMm + FIT_TOLERANCE_MM;
  const field = tooLong === (blank.grain !== 'across') ? 'length' : 'width';
  const board = product.kind === 'board';
  const grain = { along: 'along the grain', across: 'across the grain', free: 'in either direction' }[
    blank.grain
  ];
  const limit = sizeText([largest.lengthMm, largest.widthMm], settings);
  return {
    code: board ? 'part-larger-than-board' : 'part-larger-than-sheet',
    severity: 'error',
    at: { table: 'parts', id: blank.partId, field },
    message:
      `${blank.name} is cut ${sizeText([blank.lengthMm, blank.widthMm], settings)} ${grain}, which no ` +
      `${board ? 'board' : 'sheet'} of ${product.name} holds: the largest usable size is ${limit}, grain along the first.`,
    wayOut: turnedFits
      ? 'It fits turned: set its grain to free if the grain may run the other way, or add a larger size.'
      : `Make it at most ${limit} with the grain along the first, join it from smaller parts, or add a larger size.`,
  };
}

function area(size: { lengthMm: number; widthMm: number }): number {
  return size.lengthMm * size.widthMm;
}
