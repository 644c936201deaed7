import { figure } from '../figure.ts';
import type { PartPlan, RecipePlan } from '../plan-output.ts';
import { COST_CATEGORIES, type ProjectInput } from '../project-input.ts';
import type { CostItem } from './cost-item.ts';
import { groupRows } from './group-rows.ts';
import type { CostShare } from './ledger-plan.ts';
import { partUses } from './part-uses.ts';
import { perM2 } from './per-m2.ts';
import { shareWhole } from './share-whole.ts';

const TAKEN = 'what it takes of the products';
const COMMON = 'its share of what no part takes by itself';

/**
 * What does each part cost, and each section?
 *
 * What a product costs is shared over the parts by what each takes of it, whole units by largest remainder. What no part
 * takes by itself (hardware, delivery, things bought without an order) follows what the parts cost under the same heading,
 * else what they cost in all, else the number of pieces.
 *
 * @param items everything the forecast is made of, whole minor units with tax; unknown ones are left out
 * @returns a cost per part and per section as typed, and that cost per square metre finished, rounded half up. The parts add
 *   up to the known items, and the sections to the parts; there are none when the project has no pieces.
 *
 * Source: rule of ours on `shareWhole` (largest remainder method).
 */
export function costShares(
  items: readonly CostItem[],
  input: ProjectInput,
  plan: { readonly parts: readonly PartPlan[]; readonly recipes: readonly RecipePlan[] },
): { readonly parts: readonly CostShare[]; readonly sections: readonly CostShare[] } {
  const { parts } = plan;
  const none = (): number[] => parts.map(() => 0);
  const uses = partUses(input, plan);
  const insteadOf = new Map(
    input.substitutes.map(({ productId, substituteId }) => [substituteId, productId]),
  );
  const weightsOf = (productId: string | null): readonly number[] =>
    (productId === null ? undefined : (uses.get(productId) ?? uses.get(insteadOf.get(productId) ?? ''))) ??
    [];
  const taken = none();
  const common = none();
  const byHeading = new Map(COST_CATEGORIES.map((id) => [id, none()]));
  const rest: CostItem[] = [];
  for (const [, those] of groupRows(items, ({ productId, category }) => `${category} ${productId ?? ''}`)) {
    const [item] = those;
    if (item === undefined) continue;
    const totalMinor = those.reduce((sum, one) => sum + (one.totalMinor ?? 0), 0);
    const shares = shareWhole(totalMinor, weightsOf(item.productId));
    if (shares === null) rest.push({ ...item, totalMinor });
    else {
      addTo(taken, shares);
      addTo(byHeading.get(item.category) ?? none(), shares);
    }
  }
  const pieces = parts.map(({ quantity }) => quantity.value ?? 0);
  const positive = (amounts: readonly number[]): number[] => amounts.map((minor) => Math.max(0, minor));
  for (const { category, totalMinor } of rest) {
    const total = totalMinor ?? 0;
    const heading = positive(byHeading.get(category) ?? []);
    const shares =
      shareWhole(total, heading) ?? shareWhole(total, positive(taken)) ?? shareWhole(total, pieces);
    if (shares !== null) addTo(common, shares);
  }
  if (pieces.every((count) => count === 0)) return { parts: [], sections: [] };
  const sectionOf = new Map(input.parts.map(({ id, section }) => [id, section]));
  const rows = parts.map((part, index) => ({
    id: part.id,
    section: sectionOf.get(part.id) ?? '',
    takenMinor: taken[index] ?? 0,
    commonMinor: common[index] ?? 0,
    finishM2: part.totalFinishM2.value,
  }));
  return {
    parts: rows.map(({ id, ...row }) => share(id, [row])),
    sections: [...groupRows(rows, ({ section }) => section)].map(([id, those]) => share(id, those)),
  };
}

function addTo(sums: number[], amounts: readonly number[]): void {
  for (const [index, minor] of amounts.entries()) sums[index] = (sums[index] ?? 0) + minor;
}

function share(
  id: string,
  rows: readonly {
    readonly takenMinor: number;
    readonly commonMinor: number;
    readonly finishM2: number | null;
  }[],
): CostShare {
  const takenMinor = rows.reduce((sum, row) => sum + row.takenMinor, 0);
  const commonMinor = rows.reduce((sum, row) => sum + row.commonMinor, 0);
  const unknown = rows.some(({ finishM2 }) => finishM2 === null);
  const finishM2 = rows.reduce((sum, row) => sum + (row.finishM2 ?? 0), 0);
  const minor = takenMinor + commonMinor;
  const cost = figure(Number.isSafeInteger(minor) ? minor : null, 'minor', {
    rule: 'cost = what it takes of the products + its share of the rest, of the forecast without contingency',
    inputs: [
      { name: TAKEN, value: takenMinor, unit: 'minor' },
      { name: COMMON, value: commonMinor, unit: 'minor' },
    ],
    notes: ['Whole units by largest remainder, so that all parts together cost what the project costs.'],
  });
  return { id, cost, perM2: perM2(cost, unknown ? null : finishM2) };
}
