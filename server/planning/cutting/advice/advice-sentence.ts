import { formatLength } from '../../display/format-length.ts';
import { formatMoney } from '../../display/format-money.ts';
import type { ProjectSettings } from '../../project-input.ts';
import type { AdviceChange, CuttingAdvice, CuttingOutcome } from './cutting-advice.ts';

export interface AdviceWords {
  readonly settings: ProjectSettings;
  readonly kind: 'sheet' | 'board';
  readonly partName: (partId: string) => string;
  /** A size as it is sold. */
  readonly packLabel: (packId: string) => string;
}

/**
 * One piece of advice as a sentence with the numbers before and after.
 *
 * `advice`: see CuttingAdvice, mm and minor units. `words`: names, and how the project prints. Result: a sentence. No
 * source: a definition. Example: “Shelf” 3 mm shorter: 3 sheets in place of 4, for €180.00 in place of €240.00.
 */
export function adviceSentence({ change, before, after }: CuttingAdvice, words: AdviceWords): string {
  if (change.kind === 'size')
    return `${words.packLabel(change.packId)} alone: ${counted(after, words)}${priced(after, words)}; this plan takes ${before.stocks}${priced(before, words)}.`;
  return `${changed(change, words)}: ${outcome(before, after, words)}.`;
}

function changed(
  change: Exclude<AdviceChange, { kind: 'size' }>,
  { settings, partName }: AdviceWords,
): string {
  const length = (mm: number): string => formatLength(mm, settings);
  switch (change.kind) {
    case 'smaller':
      return `“${partName(change.partId)}” ${length(change.byMm)} ${change.side === 'length' ? 'shorter' : 'narrower'}`;
    case 'fewer':
      return `One “${partName(change.partId)}” fewer`;
    case 'kerf':
      return `A saw cut of ${length(change.kerfMm)} in place of ${length(settings.kerfMm)}`;
    case 'grain': {
      const names = change.partIds.map((id) => `“${partName(id)}”`);
      return `${names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)}` : names[0]} with the grain either way`;
    }
  }
}

function outcome(before: CuttingOutcome, after: CuttingOutcome, words: AdviceWords): string {
  const count =
    before.stocks === after.stocks
      ? `the same ${counted(after, words)}`
      : `${counted(after, words)} in place of ${before.stocks}`;
  if (before.costMinor === null || after.costMinor === null || before.costMinor === after.costMinor)
    return count;
  const money = (minor: number): string => formatMoney(minor, words.settings.currency);
  return `${count}, for ${money(after.costMinor)} in place of ${money(before.costMinor)}`;
}

function counted({ stocks }: CuttingOutcome, { kind }: AdviceWords): string {
  return `${stocks} ${kind}${stocks === 1 ? '' : 's'}`;
}

function priced({ costMinor }: CuttingOutcome, { settings }: AdviceWords): string {
  return costMinor === null ? '' : ` for ${formatMoney(costMinor, settings.currency)}`;
}
