import type { ProjectInput } from '../project-input.ts';
import type { CalendarPlan } from './calendar-plan.ts';
import { stepProducts } from './project/step-products.ts';

/**
 * When is each product needed for finishing?
 *
 * @param input the project, for what its steps use
 * @param plan its calendar
 * @returns product id to the start of the first task that uses it and is not done, real minutes since midnight of day 0;
 *   products that no such task uses are not in it
 *
 * Source: definition; a task that waits for curing or dries uses nothing. Valid range: any plan. Departures: none.
 * Example: the hardener of a two-part coat is needed when its first coat is laid.
 */
export function neededByMinute(
  input: Pick<ProjectInput, 'recipes' | 'blends' | 'catalogue'>,
  { tasks }: Pick<CalendarPlan, 'tasks'>,
): Readonly<Record<string, number>> {
  const needed: Record<string, number> = {};
  const productsOf = new Map(
    input.recipes.flatMap(({ steps }) =>
      steps.map((step) => [step.id, stepProducts(step, input).all] as const),
    ),
  );
  for (const { stepId, state, startMinute } of tasks) {
    if (state === 'done' || state === 'assumed') continue;
    for (const { id } of productsOf.get(stepId) ?? [])
      needed[id] = Math.min(startMinute, needed[id] ?? Number.POSITIVE_INFINITY);
  }
  return needed;
}
