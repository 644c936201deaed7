import type { PartPlan, RecipePlan } from '../plan-output.ts';
import { COST_CATEGORIES, type CostCategory, type ProjectInput } from '../project-input.ts';
import type { CostItem } from './cost-item.ts';
import { groupRows } from './group-rows.ts';
import { partUses } from './part-uses.ts';
import { shareWhole } from './share-whole.ts';

/** Whole minor units by heading, one per part in the order of the parts. */
export type SharesByHeading = ReadonlyMap<CostCategory, readonly number[]>;

/**
 * How are costs shared over the parts, heading by heading?
 *
 * What a product costs is shared by what each part takes of it, whole units by largest remainder. What no part takes by itself
 * (hardware, delivery, things bought without an order) follows what the parts take under the same heading, else what they
 * take in all, else the number of pieces.
 *
 * @param items whole minor units with tax; unknown ones are left out
 * @returns what the parts take of the products, and their shares of the rest. Together they are the known items, unless the
 *   project has no pieces.
 *
 * Source: rule of ours on `shareWhole` (largest remainder method).
 */
export function shareItems(
  items: readonly CostItem[],
  input: ProjectInput,
  plan: { readonly parts: readonly PartPlan[]; readonly recipes: readonly RecipePlan[] },
): { readonly taken: SharesByHeading; readonly common: SharesByHeading } {
  const { parts } = plan;
  const nothing = (): number[] => parts.map(() => 0);
  const taken = new Map(COST_CATEGORIES.map((id) => [id, nothing()]));
  const common = new Map(COST_CATEGORIES.map((id) => [id, nothing()]));
  const all = nothing();
  const weightsOf = weightsReader(input, plan);
  const rest: { readonly category: CostCategory; readonly totalMinor: number }[] = [];
  for (const [, those] of groupRows(items, ({ productId, category }) => `${category} ${productId ?? ''}`)) {
    const [item] = those;
    if (item === undefined) continue;
    const { category, productId } = item;
    const totalMinor = those.reduce((sum, one) => sum + (one.totalMinor ?? 0), 0);
    const shares = shareWhole(totalMinor, weightsOf(productId));
    if (shares === null) rest.push({ category, totalMinor });
    else {
      addTo(taken.get(category), shares);
      addTo(all, shares);
    }
  }
  const pieces = parts.map(({ quantity }) => quantity.value ?? 0);
  for (const { category, totalMinor } of rest) {
    const shares =
      shareWhole(totalMinor, positive(taken.get(category) ?? [])) ??
      shareWhole(totalMinor, positive(all)) ??
      shareWhole(totalMinor, pieces);
    if (shares !== null) addTo(common.get(category), shares);
  }
  return { taken, common };
}

/** What each part takes of a product; of a substitute, what it takes of the product in whose place it stands. */
function weightsReader(
  input: ProjectInput,
  plan: { readonly parts: readonly PartPlan[]; readonly recipes: readonly RecipePlan[] },
): (productId: string | null) => readonly number[] {
  const uses = partUses(input, plan);
  const insteadOf = new Map(
    input.substitutes.map(({ productId, substituteId }) => [substituteId, productId]),
  );
  return (productId) =>
    productId === null ? [] : (uses.get(productId) ?? uses.get(insteadOf.get(productId) ?? '') ?? []);
}

function addTo(sums: number[] | undefined, amounts: readonly number[]): void {
  if (sums === undefined) return;
  for (const [index, minor] of amounts.entries()) sums[index] = (sums[index] ?? 0) + minor;
}

function positive(amounts: readonly number[]): readonly number[] {
  return amounts.map((minor) => Math.max(0, minor));
}
