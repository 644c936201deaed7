import type { CalendarTask, TaskCoat } from './calendar-batch.ts';
import type { CalendarRecipe, CalendarStep } from './calendar-input.ts';
import { taskTimes } from './task-times.ts';

/**
 * Which tasks does one batch pass, in order?
 *
 * @param batchId its id
 * @param show, back the recipe of each face; null where it gets none; the same one with `points` is one pass
 * @param showM2, backM2 area per task, m2; on points all of it is `showM2`
 * @param readyMinute when the pieces are there
 * @param stepMin tasks are multiples of this
 * @returns tasks in order, back face first, and whether a recipe of the batch ends in curing
 *
 * Source: definition of the recipe. Valid range: coats with a known time to handle. Departures: see unknownDrying and
 * calendarTasks. Example: sand, two coats, both faces by turning: six tasks.
 */
export function recipeTasks({
  batchId,
  show,
  back,
  showM2,
  backM2,
  readyMinute,
  stepMin,
}: {
  readonly batchId: string;
  readonly show: CalendarRecipe | null;
  readonly back: CalendarRecipe | null;
  readonly showM2: number;
  readonly backM2: number;
  readonly readyMinute: number;
  readonly stepMin: number;
}): { readonly tasks: readonly CalendarTask[]; readonly curesAtEnd: boolean } {
  const tasks: CalendarTask[] = [];
  let waitsForCure = false;
  let curesAtEnd = false;
  const points = show !== null && show === back && show.faces === 'points';
  if (back !== null && !points) pass(back, 'back', backM2);
  if (show !== null) pass(show, points ? 'both' : 'show', showM2);
  return { tasks, curesAtEnd };

  function pass(recipe: CalendarRecipe, face: CalendarTask['face'], areaM2: number): void {
    waitsForCure = false;
    for (const step of recipe.steps) {
      if (step.kind === 'cure') {
        waitsForCure = tasks.some(({ coat }) => coat !== null);
        continue;
      }
      for (let number = 1; number <= step.coats; number++) {
        const of = { kind: step.kind, method: step.method, areaM2, stepMin };
        tasks.push({
          id: `${batchId}:${face}:${step.id}-${number}`,
          batchId,
          recipeId: recipe.id,
          stepId: step.id,
          number,
          kind: step.kind,
          name: step.name,
          method: step.coat === null ? null : step.method,
          face,
          areaM2,
          times: taskTimes({ ...of, scuffFirst: false }),
          scuffedTimes: taskTimes({ ...of, scuffFirst: true }),
          coat: taskCoat(step),
          releaseMinute: Math.max(readyMinute, step.materialMinute),
          waitsForCure,
        });
        waitsForCure = false;
      }
    }
    // What a recipe ends in is waited for at the very end: the other face needs its first one dry to handle, not cured.
    curesAtEnd ||= waitsForCure;
  }
}

function taskCoat({ coat }: CalendarStep): TaskCoat | null {
  if (coat === null || coat.handleDryMin === null) return null;
  return {
    facts: coat,
    touchDryMin: coat.touchDryMin ?? coat.handleDryMin,
    handleDryMin: coat.handleDryMin,
    recoat:
      coat.recoat.length > 0 ? coat.recoat : [{ fromMin: coat.handleDryMin, toMin: null, scuff: false }],
  };
}
