import type { PartPlan } from '../../plan-output.ts';
import type { Problem } from '../../problem.ts';
import type { PartInput, Recipe } from '../../project-input.ts';
import type { CalendarPiece } from '../calendar-input.ts';
import { calendarProblem } from './calendar-problem.ts';
import { MOST_PIECE_M2, MOST_PIECES } from './constants.ts';

/**
 * Which pieces go through the finishing room?
 *
 * @param parts, plans rows of the part list and what was worked out of them; areas m2
 * @param recipes those that a part may mention
 * @returns pieces of every part that gets a finish, and a problem for each part whose number or area is not known
 *
 * Source: definition. Valid range: any rows. Departures: a part without a known area is left out, and said.
 * Example: four shelves of 0.5 m2 with a finish on the show face: one entry with count 4.
 */
export function calendarPieces(
  parts: readonly PartInput[],
  plans: readonly PartPlan[],
  recipes: readonly Pick<Recipe, 'id'>[],
): { readonly pieces: readonly CalendarPiece[]; readonly problems: readonly Problem[] } {
  const known = new Set(recipes.map(({ id }) => id));
  const planOf = new Map(plans.map((plan) => [plan.id, plan]));
  const pieces: CalendarPiece[] = [];
  const problems: Problem[] = [];
  for (const part of parts) {
    const showRecipeId = known.has(part.showRecipeId) ? part.showRecipeId : '';
    const backRecipeId = known.has(part.backRecipeId) ? part.backRecipeId : '';
    if (showRecipeId === '' && backRecipeId === '') continue;
    const plan = planOf.get(part.id);
    const count = plan?.quantity.value ?? null;
    const showM2 = plan?.showFaceM2.value ?? null;
    const backM2 = plan?.backFaceM2.value ?? null;
    const edgeM2 = plan?.seenEdgeM2.value ?? null;
    const name = part.name.trim() === '' ? `Part ${part.id}` : part.name.trim();
    if (count === 0) continue;
    if (
      count === null ||
      showM2 === null ||
      backM2 === null ||
      count > MOST_PIECES ||
      Math.max(showM2, backM2, edgeM2 ?? 0) > MOST_PIECE_M2
    ) {
      problems.push(
        calendarProblem(
          'calendar-part-left-out',
          'warning',
          ['parts', part.id, null],
          `“${name}” is left out of the calendar, as its number or its area is not known or not a shop’s.`,
          'Correct its quantity, length and width in the part list.',
        ),
      );
      continue;
    }
    pieces.push({
      id: part.id,
      name,
      count,
      showM2,
      backM2,
      edgeM2: edgeM2 ?? 0,
      showRecipeId,
      backRecipeId,
      readyMinute: 0,
      batchName: '',
    });
  }
  return { pieces, problems };
}
