import type { CalendarBatch, CalendarTask } from './calendar-batch.ts';
import type { CalendarInput } from './calendar-input.ts';
import type { CalendarPlan } from './calendar-plan.ts';
import { calendarTasks } from './calendar-tasks.ts';

/**
 * The plan with batches and tasks called by name in its sentences.
 *
 * @param plan from planCalendar, whose sentences call them by id
 * @param input what was planned, for the names of recipes
 * @returns the same plan; sentences of blocks, ways out and problems say “batch 2 of Clear satin” for `5+5#2`
 *
 * Source: definition. Valid range: any plan. Departures: none. Example: see above.
 */
export function namedCalendar(plan: CalendarPlan, input: CalendarInput): CalendarPlan {
  if (plan.blocks.length === 0 && plan.problems.length === 0) return plan;
  const { batches } = calendarTasks(input);
  const recipeName = new Map(input.recipes.map(({ id, name }) => [id, name]));
  const names = new Map<string, string>();
  for (const batch of batches) {
    const name = batchWords(batch, recipeName);
    names.set(batch.id, name);
    for (const task of batch.tasks) names.set(task.id, `${taskWords(task)}, batch ${name}`);
  }
  const ids = [...names.keys()].sort((left, right) => right.length - left.length);
  const named = (text: string): string =>
    ids.reduce((sofar, id) => (sofar.includes(id) ? sofar.replaceAll(id, names.get(id) ?? id) : sofar), text);
  return {
    ...plan,
    blocks: plan.blocks.map((block) => ({
      ...block,
      message: named(block.message),
      waysOut: block.waysOut.map((way) => ({ ...way, message: named(way.message) })),
    })),
    problems: plan.problems.map((problem) => ({
      ...problem,
      message: named(problem.message),
      wayOut: named(problem.wayOut),
    })),
  };
}

/** The number of a batch and the recipes it gets: 2 of “Clear satin”. */
function batchWords({ id, tasks }: CalendarBatch, recipeName: ReadonlyMap<string, string>): string {
  const recipes = [...new Set(tasks.map(({ recipeId }) => recipeName.get(recipeId) ?? recipeId))];
  return `${id.slice(id.lastIndexOf('#') + 1)} of “${recipes.join(' and ')}”`;
}

function taskWords({ kind, name, number, face }: CalendarTask): string {
  const where = face === 'both' ? 'both faces' : `${face} face`;
  return `${name === '' ? kind : name} ${number} on the ${where}`;
}
