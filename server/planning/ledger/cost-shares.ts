import { figure, type WorkingInput } from '../figure.ts';
import type { PartPlan, RecipePlan } from '../plan-output.ts';
import { COST_CATEGORIES, type ProjectInput } from '../project-input.ts';
import type { CostItem } from './cost-item.ts';
import { groupRows } from './group-rows.ts';
import type { CostShare } from './ledger-plan.ts';
import { perM2 } from './per-m2.ts';
import { type SharesByHeading, shareItems } from './share-items.ts';

/**
 * What does each part cost, and each section?
 *
 * @param items everything the forecast is made of, whole minor units with tax; unknown ones are left out
 * @returns a cost per part and per section as typed, with what each heading has in it, and that cost per square metre
 *   finished, rounded half up. The parts add up to the known items, and the sections to the parts; there are none when the
 *   project has no pieces.
 *
 * Source: `shareItems`; nothing is computed here but sums.
 */
export function costShares(
  items: readonly CostItem[],
  input: ProjectInput,
  plan: { readonly parts: readonly PartPlan[]; readonly recipes: readonly RecipePlan[] },
): { readonly parts: readonly CostShare[]; readonly sections: readonly CostShare[] } {
  const { parts } = plan;
  if (parts.every(({ quantity }) => (quantity.value ?? 0) === 0)) return { parts: [], sections: [] };
  const shares = shareItems(items, input, plan);
  const sectionOf = new Map(input.parts.map(({ id, section }) => [id, section]));
  const places = parts.map(({ id, totalFinishM2 }, index) => ({
    id,
    index,
    section: sectionOf.get(id) ?? '',
    finishM2: totalFinishM2.value,
  }));
  return {
    parts: places.map((place) => shareOf(place.id, [place], shares)),
    sections: [...groupRows(places, ({ section }) => section)].map(([id, those]) =>
      shareOf(id, those, shares),
    ),
  };
}

function shareOf(
  id: string,
  places: readonly { readonly index: number; readonly finishM2: number | null }[],
  { taken, common }: { readonly taken: SharesByHeading; readonly common: SharesByHeading },
): CostShare {
  const sum = (minors: readonly number[] | undefined): number =>
    places.reduce((total, { index }) => total + (minors?.[index] ?? 0), 0);
  const inputs = COST_CATEGORIES.flatMap((heading): WorkingInput[] => [
    { name: `${heading}: what it takes`, value: sum(taken.get(heading)), unit: 'minor' },
    {
      name: `${heading}: its share of what no part takes by itself`,
      value: sum(common.get(heading)),
      unit: 'minor',
    },
  ]).filter(({ value }) => value !== 0);
  const minor = inputs.reduce((total, { value }) => total + Number(value), 0);
  const cost = figure(Number.isSafeInteger(minor) ? minor : null, 'minor', {
    rule: 'cost = what it takes under each heading + its share of what no part takes, of the forecast without contingency; whole units by largest remainder',
    inputs,
  });
  const unknown = places.some(({ finishM2 }) => finishM2 === null);
  const finishM2 = places.reduce((total, place) => total + (place.finishM2 ?? 0), 0);
  return { id, cost, perM2: perM2(cost, unknown ? null : finishM2) };
}
