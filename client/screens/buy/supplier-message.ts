import type { ScreenBook } from '../../fields/screen-book.ts';
import type { BuyLine } from './group-lines.ts';
import { packsText } from './paper-buy.ts';

/**
 * What to write to a supplier: the lines to buy in whole packs, with sizes, ready to paste. Prices only when asked for:
 * most suppliers are to name their own.
 */
export function supplierMessage(
  { formats, settings }: ScreenBook,
  lines: readonly BuyLine[],
  options: { readonly prices: boolean; readonly neededBy: string },
): string {
  const wanted = lines.filter(({ toBuy }) => toBuy !== 0);
  const rows = wanted.map((line) => {
    const packs = packsText(formats.count, formats.amount(line.toBuy, line.unit), line);
    const price = options.prices && line.cost !== null ? `, ${formats.money(line.cost)} before tax` : '';
    return `- ${line.name}: ${packs}${price}`;
  });
  return [
    `Order for ${settings.name}`,
    '',
    ...rows,
    '',
    ...(options.neededBy === '' ? [] : [`Needed by ${options.neededBy}.`]),
    ...(options.prices
      ? ['Please confirm the prices and the day of delivery.']
      : ['Please give the price of each line and the day of delivery.']),
  ].join('\n');
}
