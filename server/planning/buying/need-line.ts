import { MAX_AMOUNT } from '../finish/constants.ts';
import { fewestPacks } from '../packs/fewest-packs.ts';
import { leastCostPacks } from '../packs/least-cost-packs.ts';
import type { BuyLine, NeedPlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { Product } from '../product.ts';
import type { ProjectInput } from '../project-input.ts';
import { buyLine } from './buy-line.ts';
import { lineNotes } from './line-notes.ts';
import { packBasisProblems, soundPacks } from './line-problems.ts';
import type { OnHandAmount } from './on-hand-amounts.ts';
import type { CountedPack } from './priced-packs.ts';
import type { StockPurchase } from './stock-purchases.ts';

/**
 * The buy line of a product that is poured or counted out of packs.
 *
 * @param need of the project, in the product's unit
 * @param onHand what is on the shelf, in the same unit
 * @param cutting rolls, sheets or boards of the same product its cutting plan buys as well, when the user added some by
 *   hand; those are packs on top
 * @returns the line with the cheapest packs and, where it differs, the plan with the fewest
 *
 * Source: `leastCostPacks`, `fewestPacks`; nothing is computed here.
 */
export function needLine({
  product,
  need,
  onHand,
  cutting,
  input,
}: {
  readonly product: Product;
  readonly need: NeedPlan;
  readonly onHand: OnHandAmount;
  readonly cutting: StockPurchase | null;
  readonly input: ProjectInput;
}): { readonly line: BuyLine; readonly problems: readonly Problem[] } {
  const { currency } = input.settings;
  const needInputs = [
    { name: 'need', value: need.need.value, unit: product.unit, from: `needs/${product.id}/need` },
  ];
  const onHandInputs = onHand.rows.map(({ amount, count }) => ({
    name: `${count} on hand, each`,
    value: amount,
    unit: product.unit,
  }));
  const common = { product, currency, catalogue: input.catalogue };
  const tooLarge = need.need.value !== null && need.need.value > MAX_AMOUNT;
  if (need.need.value === null || tooLarge || cutting?.need === null) {
    const amounts = {
      need: null,
      onHand: onHand.amount,
      toBuy: null,
      leftover: null,
      needInputs,
      onHandInputs,
    };
    const notes = need.need.working.notes ?? [];
    return {
      line: buyLine({ ...common, amounts, packs: [], fewest: [], notes }),
      problems: tooLarge ? [needTooLarge(product, need.need.value)] : [],
    };
  }
  const sound = soundPacks(product);
  const question = { need: need.need.value, onHand: onHand.amount, packs: sound.packs, currency };
  const choice = leastCostPacks(question);
  const fewest = fewestPacks(question);
  const same = cutting !== null || cans(fewest.packs) >= cans(choice.packs);
  const cut = { need: cutting?.need ?? 0, fromStock: cutting?.fromStock ?? 0, packs: cutting?.packs ?? [] };
  const cutBought = cut.packs.reduce((sum, { pack, count }) => sum + pack.amount * count, 0);
  return {
    line: buyLine({
      ...common,
      amounts: {
        need: question.need + cut.need,
        onHand: onHand.amount + cut.fromStock,
        toBuy: choice.toBuy + cut.need - cut.fromStock,
        leftover: choice.leftover === null ? null : choice.leftover + cutBought + cut.fromStock - cut.need,
        needInputs: [
          ...needInputs,
          ...(cutting === null
            ? []
            : [{ name: cutting.needName, value: cutting.need, unit: product.unit, from: cutting.from }]),
        ],
        onHandInputs,
      },
      packs: choice.basis === 'none' ? [] : together([...cut.packs, ...choice.packs]),
      fewest: same ? [] : fewest.packs,
      notes: lineNotes({ product, need, choice, question }),
    }),
    problems: [...sound.problems, ...packBasisProblems(product, choice.basis, currency)],
  };
}

function cans(packs: readonly CountedPack[]): number {
  return packs.reduce((sum, { count }) => sum + count, 0);
}

function together(packs: readonly CountedPack[]): readonly CountedPack[] {
  const counts = new Map<CountedPack['pack'], number>();
  for (const { pack, count } of packs) counts.set(pack, (counts.get(pack) ?? 0) + count);
  return [...counts].map(([pack, count]) => ({ pack, count }));
}

function needTooLarge(product: Product, need: number | null): Problem {
  return {
    code: 'quantity-too-large',
    severity: 'error',
    at: { table: 'products', id: product.id, field: null },
    message: `The project needs ${need} ${product.unit} of "${product.name}", which is more than ${MAX_AMOUNT} and cannot be meant.`,
    wayOut: 'Look for a slip in the sizes, quantities or coverage this need comes from.',
  };
}
