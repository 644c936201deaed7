import type { CalendarPlan } from '../../calendar/calendar-plan.ts';
import type { Plan } from '../../plan-output.ts';
import type { ProblemPlace } from '../../problem.ts';
import { COAT_STEPS, type ProjectInput, type Recipe, type RecipeStep } from '../../project-input.ts';
import type { AirGap } from '../air-check-input.ts';

/** Share of a recipe's area that may be lost to rounding between the plan and its calendar. Ours. */
const AREA_ROUNDING = 1e-6;

/**
 * Which coats are not all in the calendar, so that their vapour would not be counted?
 *
 * @param input the project, for its parts and recipes
 * @param plan its plan, for the m2 of each part and recipe
 * @param calendar its calendar; null when there is none
 * @returns one gap per part of unknown area, per coat without a product, and per recipe of which some area has no time; one
 *   gap alone where there is no calendar
 *
 * Source: a rule of ours: a coat without a time or an area is unknown, not nothing. Valid range: any plan. Departures:
 * none. Example: a recipe left out of the calendar because a drying time is not known: one gap.
 */
export function calendarGaps(
  input: Pick<ProjectInput, 'parts' | 'recipes'>,
  plan: Pick<Plan, 'parts' | 'recipes'>,
  calendar: CalendarPlan | null,
): AirGap[] {
  const unnamed = partAndCoatGaps(input, plan);
  const used = usedRecipes(input, plan);
  if (used.length === 0) return unnamed;
  if (calendar === null || (calendar.state !== 'planned' && calendar.state !== 'nothing-to-do'))
    return [
      ...unnamed,
      gap(
        CALENDAR,
        `When the coats are laid is not known: the calendar has ${calendar === null ? 'no plan yet' : 'found no plan that fits'}.`,
        'Open the calendar and mend what it names.',
      ),
    ];
  const left = used.filter((recipe) => isLeftOut(recipe, recipeArea(plan, recipe.id), calendar));
  return [
    ...unnamed,
    ...left.map(({ id, name }) =>
      gap(
        CALENDAR,
        `Not every coat of "${name.trim() || `recipe ${id}`}" is in the calendar, so not all of its vapour is counted.`,
        'Open the calendar and mend what it names.',
      ),
    ),
  ];
}

/**
 * Of which parts is the coated area not known, and which coats do not say what is laid?
 *
 * @param input the project, for its parts and recipes
 * @param plan its plan, for the m2 of each part and recipe
 * @returns one gap per part and per coat
 *
 * Source: definition. Valid range: any plan. Departures: none. Example: a shelf without a width: one gap.
 */
export function partAndCoatGaps(
  input: Pick<ProjectInput, 'parts' | 'recipes'>,
  plan: Pick<Plan, 'parts' | 'recipes'>,
): AirGap[] {
  return [...partGaps(input, plan), ...usedRecipes(input, plan).flatMap(unnamedCoats)];
}

function usedRecipes(
  { parts, recipes }: Pick<ProjectInput, 'parts' | 'recipes'>,
  plan: Pick<Plan, 'recipes'>,
): Recipe[] {
  return recipes.filter(
    ({ id, steps }) =>
      steps.some(isCoat) &&
      recipeArea(plan, id) !== 0 &&
      parts.some(({ showRecipeId, backRecipeId }) => showRecipeId === id || backRecipeId === id),
  );
}

const CALENDAR: ProblemPlace = { table: 'settings', id: null, field: 'calendar' };

function partGaps(
  { parts, recipes }: Pick<ProjectInput, 'parts' | 'recipes'>,
  plan: Pick<Plan, 'parts'>,
): AirGap[] {
  const known = new Set(recipes.map(({ id }) => id));
  return parts.flatMap(({ id, name, showRecipeId, backRecipeId }) => {
    const wanted = [showRecipeId, backRecipeId].filter((recipeId) => recipeId !== '');
    const area = plan.parts.find((part) => part.id === id)?.totalFinishM2.value ?? null;
    if (wanted.length === 0 || (area !== null && wanted.every((recipeId) => known.has(recipeId)))) return [];
    return [
      gap(
        { table: 'parts', id, field: null },
        `How much of "${name.trim() || `part ${id}`}" is coated, and with what, is not known.`,
        'Correct its quantity, length, width and finish in the part list.',
      ),
    ];
  });
}

function unnamedCoats({ name, steps }: Recipe): AirGap[] {
  return steps
    .filter((step) => isCoat(step) && step.productId === '' && step.blendId === '')
    .map(({ id }) =>
      gap(
        { table: 'steps', id, field: 'productId' },
        `A coat of "${name}" does not say what is laid.`,
        'Choose a product or a blend for the step.',
      ),
    );
}

function isLeftOut({ id, steps }: Recipe, whole: number, { tasks }: CalendarPlan): boolean {
  const laid = (step: RecipeStep, number: number): number =>
    tasks
      .filter((task) => task.recipeId === id && task.stepId === step.id && task.number === number)
      .reduce((sum, task) => sum + (task.layFromMinute === null ? 0 : task.areaM2), 0);
  return steps
    .filter((step) => isCoat(step) && (step.productId !== '' || step.blendId !== ''))
    .some((step) =>
      Array.from({ length: step.coats }, (_, index) => laid(step, index + 1)).some(
        (areaM2) => areaM2 < whole * (1 - AREA_ROUNDING),
      ),
    );
}

/** Of the parts whose area is known; Infinity where even that is not, so that no calendar covers it. */
function recipeArea({ recipes }: Pick<Plan, 'recipes'>, id: string): number {
  return recipes.find((recipe) => recipe.id === id)?.areaM2.value ?? Number.POSITIVE_INFINITY;
}

function isCoat({ kind }: RecipeStep): boolean {
  return COAT_STEPS.some((coat) => coat === kind);
}

function gap(at: ProblemPlace, message: string, wayOut: string): AirGap {
  return { field: 'calendar', coatId: null, substanceId: null, at, message, wayOut };
}
