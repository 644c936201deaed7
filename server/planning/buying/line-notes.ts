import { MAX_AMOUNT } from '../finish/constants.ts';
import type { CoverageEnd } from '../finish/coverage-ends.ts';
import { readFigure } from '../finish/read-figure.ts';
import { leastCostPacks } from '../packs/least-cost-packs.ts';
import type { PackChoice, PackQuestion } from '../packs/pack-choice.ts';
import type { NeedPlan } from '../plan-output.ts';
import type { Product } from '../product.ts';
import { packsInWords } from './priced-packs.ts';

/**
 * What should someone know when ordering a line: one batch, shelf life, what the coverage range would change?
 *
 * @param choice the packs to be bought
 * @param question what they were chosen for
 * @returns sentences, in the order of ordering, opening and doubting
 *
 * Source: one batch, mixed together, is common practice, no source; the shelf life is the catalogue's.
 */
export function lineNotes({
  product,
  need,
  choice,
  question,
}: {
  readonly product: Product;
  readonly need: NeedPlan;
  readonly choice: PackChoice;
  readonly question: PackQuestion;
}): readonly string[] {
  return [
    ...batchNotes(product, choice, question),
    ...shelfLifeNotes(product, choice),
    ...rangeNotes(need, choice, question),
    ...(choice.proven || choice.basis === 'none'
      ? []
      : ['A slightly cheaper mix of packs is possible: the search was cut short.']),
    ...(need.need.working.notes ?? []),
  ];
}

function batchNotes(product: Product, choice: PackChoice, { onHand }: PackQuestion): readonly string[] {
  const coloured = product.choices.role === 'stain' || product.choices.role === 'paint';
  const cans = choice.packs.reduce((sum, { count }) => sum + count, onHand > 0 ? 1 : 0);
  if (!coloured || cans < 2) return [];
  return [
    'More than one can of a colour: ask for one batch, and mix all of them together before use.',
    ...(onHand > 0 && choice.packs.length > 0
      ? ['What is on hand may be of another batch: mix it in and try it on an offcut first.']
      : []),
  ];
}

function shelfLifeNotes(product: Product, { leftover, basis }: PackChoice): readonly string[] {
  if (leftover === null || leftover === 0 || basis === 'enough') return [];
  if (!['finish', 'thinner', 'glue', 'filler'].includes(product.kind)) return [];
  const { value, source } = readFigure(product, 'shelfLifeOpened');
  return [
    value === null
      ? 'Some is left over; how long it keeps once opened is not known, so write the date on it.'
      : `Some is left over; once opened it keeps about ${value} months (${source}), so write the date on it.`,
  ];
}

/** What other ends of the coverage range would take, ends with the same packs in one sentence. */
function rangeNotes(need: NeedPlan, choice: PackChoice, question: PackQuestion): readonly string[] {
  const ends: readonly (readonly [CoverageEnd, number | null])[] = [
    ['low', need.needAtLowCoverage.value],
    ['typical', need.needAtTypicalCoverage.value],
    ['high', need.needAtHighCoverage.value],
  ];
  const endsOf = new Map<string, CoverageEnd[]>();
  for (const [end, atEnd] of ends) {
    if (atEnd === null || atEnd === question.need || atEnd > MAX_AMOUNT) continue;
    const { packs } = leastCostPacks({ ...question, need: atEnd });
    if (packsInWords(packs) === packsInWords(choice.packs)) continue;
    const sentence = `${packsInWords(packs)} would ${atEnd < question.need ? 'do' : 'be needed'}.`;
    endsOf.set(sentence, [...(endsOf.get(sentence) ?? []), end]);
  }
  return [...endsOf].map(([sentence, named]) => `At ${named.join(' or ')} coverage ${sentence}`);
}
