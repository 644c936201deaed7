import { planBanding } from './banding/plan-banding.ts';
import { planBuying } from './buying/plan-buying.ts';
import { planMaterials } from './cutting/plan-materials.ts';
import { planSizes } from './dimensions/plan-sizes.ts';
import { planFinish } from './finish/plan-finish.ts';
import { planNeeds } from './finish/plan-needs.ts';
import { planParts } from './geometry/plan-parts.ts';
import { planGroups } from './ledger/plan-groups.ts';
import { planTotals } from './ledger/plan-totals.ts';
import { type PlanMemory, planMemory } from './plan-memory.ts';
import type { Plan } from './plan-output.ts';
import type { ProjectInput } from './project-input.ts';

/**
 * The whole plan of one project: what every part, strip, roll, sheet, coat, pack and line comes to, each figure
 * with its working, and every problem found on the way.
 *
 * Pure: the same input gives a deeply equal plan. Nothing here throws for what a user can type; a bad cell or row
 * becomes a located problem and the figures that hang on it are null.
 *
 * `memory`, kept from one planning of a project to the next, saves working out again what an edit did not touch; the
 * plan is the same without it.
 */
export function plan(input: ProjectInput, memory: PlanMemory = planMemory()): Plan {
  const sizes = planSizes(input);
  const geometry = planParts(input, sizes.values, memory.parts);
  const banding = planBanding(input, geometry.parts);
  const cutting = planMaterials(input, geometry.parts, 1, memory.materials);
  const finish = planFinish(input, geometry.parts);
  const stages = {
    parts: geometry.parts,
    banding: banding.banding,
    materials: cutting.materials,
    recipes: finish.recipes,
  };
  const needs = planNeeds(input, stages);
  const buying = planBuying(input, { ...stages, needs: needs.needs });

  return {
    ...stages,
    sizes: sizes.sizes,
    needs: needs.needs,
    buy: buying.buy,
    totals: planTotals(stages),
    groups: planGroups(input.parts, geometry.parts),
    problems: [
      ...sizes.problems,
      ...geometry.problems,
      ...banding.problems,
      ...cutting.problems,
      ...finish.problems,
      ...needs.problems,
      ...buying.problems,
    ],
  };
}
