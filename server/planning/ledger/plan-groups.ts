import type { Figure, FigureUnit, WorkingInput } from '../figure.ts';
import type { GroupPlan, PartPlan, PlanGroups } from '../plan-output.ts';
import type { PartInput } from '../project-input.ts';
import { sumKnown } from './sum-known.ts';

/** A working spells out this many part rows; a longer list would be no help to its reader. */
const LISTED_ROWS = 40;

/**
 * What the part rows of each section, and of each material, come to: rows, pieces, metres banded, area finished.
 *
 * `parts` and `plans` are the same rows in the same order. Sections and materials stand in the order in which the
 * list first names them; parts without one form the group with the empty id. Units as in `GroupPlan`; a row whose
 * figure is unknown is left out of the sum and said so. No source: sums only.
 *
 * Example: two shelves of 0.9 m banded and a side of 1.8 m in section "Carcass" make 2.7 m there.
 */
export function planGroups(parts: readonly PartInput[], plans: readonly PartPlan[]): PlanGroups {
  if (parts.length !== plans.length)
    throw new RangeError(`planGroups: ${parts.length} parts but ${plans.length} part plans`);
  const rows = parts.map((part, index): Row => ({ part, plan: plans[index] as PartPlan }));
  return {
    sections: groups(rows, ({ part }) => part.section),
    materials: groups(rows, ({ part }) => part.materialId),
  };
}

interface Row {
  readonly part: PartInput;
  readonly plan: PartPlan;
}

function groups(rows: readonly Row[], idOf: (row: Row) => string): GroupPlan[] {
  const byId = new Map<string, Row[]>();
  for (const row of rows) {
    const id = idOf(row);
    const members = byId.get(id);
    if (members === undefined) byId.set(id, [row]);
    else members.push(row);
  }
  return [...byId].map(([id, members]) => ({
    id,
    rows: members.length,
    pieces: sum('pieces = sum of the quantities of the group', 'pcs', members, 'quantity'),
    bandedM: sum('metres banded = sum over the parts of the group', 'm', members, 'totalBandedM'),
    finishM2: sum('area finished = sum over the parts of the group', 'm2', members, 'totalFinishM2'),
  }));
}

function sum(
  rule: string,
  unit: FigureUnit,
  members: readonly Row[],
  field: 'quantity' | 'totalBandedM' | 'totalFinishM2',
): Figure {
  const figures = members.map(({ plan }) => plan[field]);
  if (members.length > LISTED_ROWS) return sumKnown(rule, unit, 'part rows', figures);
  const inputs = members.map(
    ({ part, plan }): WorkingInput => ({
      name: part.name === '' ? 'part without a name' : part.name,
      value: plan[field].value,
      unit,
      from: `parts/${plan.id}/${field}`,
    }),
  );
  return sumKnown(rule, unit, 'part rows', figures, inputs);
}
