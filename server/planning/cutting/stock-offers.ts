import type { Problem } from '../problem.ts';
import type { Pack, Product } from '../product.ts';
import type { ProjectInput, ProjectSettings } from '../project-input.ts';
import { sizeText } from './size-text.ts';
import type { StockOffer } from './stock-offer.ts';

const MM_PER_METRE = 1000;

/**
 * What sheets or boards of one product there are to cut from: packs to buy, and pieces on hand.
 *
 * `product`: kind sheet or board. `input`: for currency, trim and stock on hand.
 * Result: the offers, those on hand first; and the problems of packs without size or price. Packs in another currency
 * are used, without a price, only when there is none in the project's; unpriced ones only when none has a price. Of
 * several packs of one size the cheapest is kept. Lengths mm, prices minor units. Rule of ours, no source.
 */
export function stockOffers(
  product: Product,
  input: ProjectInput,
): { offers: StockOffer[]; problems: Problem[] } {
  const problems: Problem[] = [];
  const trimMm = product.kind === 'sheet' ? input.settings.sheetTrimMm : 0;
  const boardWidthMm = product.figures.width?.typical ?? null;
  const untrimmed = product.packs.flatMap((pack) => {
    const size = product.kind === 'sheet' ? sheetSize(pack) : boardSize(pack.amount, boardWidthMm);
    return size === null ? [] : [{ pack, ...size }];
  });
  const sized = untrimmed.filter((size) => Math.min(size.lengthMm, size.widthMm) > 2 * trimMm);
  const ours = sized.filter(({ pack }) => pack.currency === input.settings.currency);
  const priced = ours.filter(({ pack }) => pack.priceMinor !== null);
  const usable = priced.length > 0 ? priced : ours.length > 0 ? ours : sized;
  const cheapest = new Map<string, StockOffer>();
  for (const { pack, lengthMm, widthMm } of usable) {
    const priceMinor = ours.length > 0 ? pack.priceMinor : null;
    const key = `${lengthMm} ${widthMm}`;
    const known = cheapest.get(key);
    if (known !== undefined && (known.priceMinor ?? 0) <= (priceMinor ?? 0)) continue;
    const { id: packId, label } = pack;
    cheapest.set(key, {
      packId,
      onHandId: null,
      label,
      lengthMm,
      widthMm,
      trimMm,
      priceMinor,
      limit: Infinity,
    });
  }
  const bought = [...cheapest.values()];
  if (bought.length > 0 && priced.length === 0) problems.push(priceProblem(product, ours.length > 0, input));

  const onHand: StockOffer[] = [];
  for (const stock of input.onHand) {
    if (stock.productId !== product.id || !(stock.count >= 1)) continue;
    const size = product.kind === 'sheet' ? sheetSize(stock) : boardSize(stock.amount, boardWidthMm);
    if (size === null) {
      if (product.kind === 'sheet') problems.push(onHandProblem(stock.id, product));
      continue;
    }
    onHand.push({
      packId: null,
      onHandId: stock.id,
      label: `${sizeText(product.kind === 'sheet' ? [size.lengthMm, size.widthMm] : [size.lengthMm], input.settings)} on hand`,
      ...size,
      trimMm: 0,
      priceMinor: 0,
      limit: Math.floor(stock.count),
    });
  }
  const [trimmedAway] = untrimmed;
  if (bought.length === 0)
    problems.push(
      trimmedAway === undefined
        ? sizeProblem(product, boardWidthMm)
        : trimProblem(product, trimmedAway, input.settings),
    );
  return { offers: [...onHand, ...bought], problems };
}

interface Size {
  readonly lengthMm: number;
  readonly widthMm: number;
}

function sheetSize(sheet: Pick<Pack, 'lengthMm' | 'widthMm'>): Size | null {
  const { lengthMm, widthMm } = sheet;
  if (lengthMm === null || widthMm === null) return null;
  return positive(lengthMm) && positive(widthMm) ? { lengthMm, widthMm } : null;
}

function boardSize(lengthM: number, widthMm: number | null): Size | null {
  if (widthMm === null || !positive(widthMm) || !positive(lengthM)) return null;
  return { lengthMm: lengthM * MM_PER_METRE, widthMm };
}

function positive(size: number): boolean {
  return size > 0 && Number.isFinite(size);
}

function priceProblem(product: Product, inCurrency: boolean, input: ProjectInput): Problem {
  const { currency } = input.settings;
  return {
    code: inCurrency ? 'price-missing' : 'price-currency-missing',
    severity: 'warning',
    at: { table: 'products', id: product.id, field: 'packs' },
    message: inCurrency
      ? `No pack of ${product.name} has a price, so the cutting plan saves area, not money.`
      : `No pack of ${product.name} has a price in ${currency}, so the cutting plan saves area, not money.`,
    wayOut: `Enter a price in ${currency} for at least one size of ${product.name} in the catalogue.`,
  };
}

function onHandProblem(id: string, product: Product): Problem {
  return {
    code: 'on-hand-invalid',
    severity: 'warning',
    at: { table: 'onHand', id, field: 'lengthMm' },
    message: `A piece of ${product.name} on hand has no size, so nothing is cut from it.`,
    wayOut: 'Enter its usable length and width.',
  };
}

function trimProblem(product: Product, { lengthMm, widthMm }: Size, settings: ProjectSettings): Problem {
  return {
    code: 'setting-invalid',
    severity: 'error',
    at: { table: 'settings', id: null, field: 'sheetTrimMm' },
    message: `A trim of ${sizeText([settings.sheetTrimMm], settings)} on every side leaves nothing of ${product.name}, ${sizeText([lengthMm, widthMm], settings)}.`,
    wayOut: 'Enter how much is trimmed off each side of a full sheet, usually 5 to 10 mm, or 0.',
  };
}

function sizeProblem(product: Product, boardWidthMm: number | null): Problem {
  const board = product.kind === 'board';
  const noWidth = board && boardWidthMm === null;
  const what = noWidth ? 'its width' : board ? 'a board length' : 'a sheet size';
  return {
    code: 'sheet-size-unknown',
    severity: 'error',
    at: { table: 'products', id: product.id, field: noWidth ? 'width' : 'packs' },
    message: `${product.name} cannot be laid out: the catalogue does not say ${what}.`,
    wayOut: board
      ? `Enter the actual width and at least one length of ${product.name} in the catalogue.`
      : `Enter length and width of at least one sheet of ${product.name} in the catalogue.`,
  };
}
