import type { PlanMemory } from '../plan-memory.ts';
import type { MaterialPlan, PartPlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { ProjectInput, ProjectSettings } from '../project-input.ts';
import { roundMemory } from '../round-memory.ts';
import { MOST_KERF_MM } from './constants.ts';
import { materialBlanks } from './material-blanks.ts';
import { planMaterial } from './plan-material.ts';

/**
 * How the parts are cut from sheets and boards, how many of each to buy, and what they cost.
 *
 * `input`: settings (kerf and trim in mm), part rows, stock on hand, catalogue. `parts`: cut sizes in mm, one per row.
 * `effort`: 1 is what an edit can wait for (about 15 ms); more searches longer. `memory` saves planning materials anew
 * whose parts are as they were; the answer is the same without it.
 * Result: one plan per sheet or board product in the order of the part list, and the problems found. Guillotine cuts
 * only; least cost among what was tried, with the bound that no plan can beat. Same input, same plan.
 */
export function planMaterials(
  input: ProjectInput,
  parts: readonly PartPlan[],
  effort = 1,
  memory: PlanMemory['materials'] = roundMemory(),
): { materials: MaterialPlan[]; problems: Problem[] } {
  const materials = materialBlanks(input, parts);
  const settingProblems = materials.length > 0 ? cuttingSettingProblems(input.settings) : [];
  const usable = settingProblems.length === 0;
  const share = usable ? effort / materials.length : null;
  const matches = grainMatches(input);
  const planOf = memory.begin(
    [share, input.settings, input.onHand, input.measurements, input.begunPlans],
    [input.catalogue, ...(input.foundLayouts ?? [])],
  );
  const planned = materials.map((material) => {
    const { product, blanks, unknownRows } = material;
    const question = [product.id, blanks, unknownRows, blanks.map(({ partId }) => matches.get(partId))];
    return planOf(question, () => planMaterial(material, input, share));
  });
  return {
    materials: planned.map(({ plan }) => plan),
    problems: [...settingProblems, ...planned.flatMap(({ problems }) => problems)],
  };
}

/** Rows with a grain match: its name by the part's id. */
function grainMatches({ parts }: ProjectInput): ReadonlyMap<string, string> {
  return new Map(parts.flatMap(({ id, grainMatch }) => (grainMatch.trim() === '' ? [] : [[id, grainMatch]])));
}

function cuttingSettingProblems({ kerfMm, sheetTrimMm }: ProjectSettings): Problem[] {
  const problems: Problem[] = [];
  if (!(kerfMm >= 0 && kerfMm <= MOST_KERF_MM))
    problems.push({
      code: 'kerf-invalid',
      severity: 'error',
      at: { table: 'settings', id: null, field: 'kerfMm' },
      message: `The saw kerf is ${kerfMm} mm; it must be between 0 and ${MOST_KERF_MM} mm.`,
      wayOut: 'Enter the width of the saw cut, usually 2 to 4 mm.',
    });
  if (!(sheetTrimMm >= 0 && Number.isFinite(sheetTrimMm)))
    problems.push({
      code: 'setting-invalid',
      severity: 'error',
      at: { table: 'settings', id: null, field: 'sheetTrimMm' },
      message: `The sheet trim is ${sheetTrimMm} mm; it must be 0 or more.`,
      wayOut: 'Enter how much is trimmed off each side of a full sheet, or 0.',
    });
  return problems;
}
