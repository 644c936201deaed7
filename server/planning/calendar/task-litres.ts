import type { RecipePlan } from '../plan-output.ts';
import type { CalendarTaskPlan } from './calendar-plan.ts';

/**
 * How much liquid does each task of the calendar take?
 *
 * @param recipes the finish plan: litres and m2 of each coat over all parts
 * @param tasks of the calendar; areas m2
 * @returns task id to litres of mixed liquid, for coats; null where the finish plan cannot tell
 *
 * Source: a rule of ours: the litres of a coat are shared out over its batches by area, so that they add up to what is
 * bought. Valid range: any plan. Departures: what stays in the brush is shared out likewise, not counted per batch.
 * Example: a coat of 0.6 L on 6 m2, a batch of 2 m2: 0.2 L.
 */
export function taskLitres(
  recipes: readonly RecipePlan[],
  tasks: readonly CalendarTaskPlan[],
): Readonly<Record<string, number | null>> {
  const litres: Record<string, number | null> = {};
  for (const { id, recipeId, stepId, number, method, areaM2 } of tasks) {
    if (method === null) continue;
    const recipe = recipes.find((one) => one.id === recipeId);
    const total = recipe?.areaM2.value ?? null;
    const coat =
      recipe?.coats.find((one) => one.stepId === stepId && one.number === number)?.litres.value ?? null;
    litres[id] = total === null || coat === null || total <= 0 ? null : (coat * areaM2) / total;
  }
  return litres;
}
