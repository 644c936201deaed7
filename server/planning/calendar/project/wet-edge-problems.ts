import { formatArea } from '../../display/format-area.ts';
import { APPLICATION_RATE_M2_PER_MIN } from '../../finish/constants.ts';
import type { Problem } from '../../problem.ts';
import { COAT_STEPS, type ProjectInput, type RecipeStep } from '../../project-input.ts';
import type { CalendarPiece } from '../calendar-input.ts';
import { coatFacts } from '../coat-facts.ts';
import { calendarProblem } from './calendar-problem.ts';
import { stepProducts } from './step-products.ts';

interface Limit {
  readonly areaM2: number;
  readonly step: RecipeStep;
  readonly name: string;
}

/**
 * Which recipes have faces too large to be coated with a wet edge?
 *
 * @param input recipes, blends and catalogue
 * @param pieces areas m2
 * @returns one warning per recipe, at the step with the shortest working time, where a face takes longer
 *
 * Source: working times from the label; rates in finish/constants.ts, common practice, no source. Valid range: any.
 * Departures: wiped steps are not looked at, as they limit the batch. Example: 3 min by brush at 0.15 m2/min: 0.45 m2.
 */
export function wetEdgeProblems(input: ProjectInput, pieces: readonly CalendarPiece[]): Problem[] {
  return input.recipes.flatMap(({ id, steps }): Problem[] => {
    const limit = tightest(steps, input);
    if (limit === null) return [];
    const faces = pieces
      .map(({ name, showM2, backM2, showRecipeId, backRecipeId }) => ({
        name,
        areaM2: Math.max(showRecipeId === id ? showM2 : 0, backRecipeId === id ? backM2 : 0),
      }))
      .filter(({ areaM2 }) => areaM2 > limit.areaM2)
      .sort((left, right) => right.areaM2 - left.areaM2);
    const [largest] = faces;
    if (largest === undefined) return [];
    const others =
      ['', ', and another part has such a face'][faces.length - 1] ??
      `, and ${faces.length - 1} other parts have such faces`;
    return [
      calendarProblem(
        'batch-too-large',
        'warning',
        ['steps', limit.step.id, 'method'],
        `Within the working time of “${limit.name}” one person coats ${formatArea(limit.areaM2, input.settings)}, but a face of “${largest.name}” has ${formatArea(largest.areaM2, input.settings)}${others}.`,
        'Lay this coat by a faster method, choose a slower product, or have a second person keep the edge wet.',
      ),
    ];
  });
}

function tightest(steps: readonly RecipeStep[], input: ProjectInput): Limit | null {
  let limit: Limit | null = null;
  for (const step of steps) {
    if (step.method === 'wipe' || !(COAT_STEPS as readonly string[]).includes(step.kind)) continue;
    const { laid } = stepProducts(step, input);
    const workingTimeMin = laid.length === 0 ? null : coatFacts(laid).workingTimeMin;
    if (workingTimeMin === null) continue;
    const areaM2 = workingTimeMin * APPLICATION_RATE_M2_PER_MIN[step.method];
    if (limit === null || areaM2 < limit.areaM2) limit = { areaM2, step, name: laid[0]?.name ?? '' };
  }
  return limit;
}
