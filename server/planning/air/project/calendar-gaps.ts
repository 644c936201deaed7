import type { CalendarPlan } from '../../calendar/calendar-plan.ts';
import type { Plan } from '../../plan-output.ts';
import { COAT_STEPS } from '../../project-input.ts';
import type { AirGap } from '../air-check-input.ts';

/** Share of a recipe's area that may be lost to rounding between the plan and its calendar. Ours. */
const AREA_ROUNDING = 1e-6;

/**
 * Which coats does the calendar not tell the time of?
 *
 * @param plan the project's plan, for the m2 of each coat
 * @param calendar its calendar; null when there is none
 * @returns one gap when there is no calendar, and else one per recipe of which some area is not planned for
 *
 * Source: a rule of ours: a coat without a time is unknown, not nothing. Valid range: any plan. Departures: none.
 * Example: a recipe left out of the calendar because a drying time is not known: one gap.
 */
export function calendarGaps(plan: Pick<Plan, 'recipes'>, calendar: CalendarPlan | null): AirGap[] {
  const laid = plan.recipes.filter(
    ({ areaM2, coats }) => areaM2.value !== 0 && coats.some((coat) => isLiquid(coat.kind)),
  );
  if (laid.length === 0) return [];
  if (calendar === null || (calendar.state !== 'planned' && calendar.state !== 'nothing-to-do'))
    return [
      gap(
        'When the coats are laid is not known: the calendar has no plan yet.',
        'Open the calendar and mend what it names.',
      ),
    ];
  return laid.flatMap(({ id, name, areaM2, coats }) => {
    if (areaM2.value === null)
      return [
        gap(
          `How much "${name}" covers is not known.`,
          'Correct the sizes and quantities of its parts in the part list.',
        ),
      ];
    const whole = areaM2.value;
    const missing = coats.some(({ kind, stepId, number }) => {
      if (!isLiquid(kind)) return false;
      const tasks = calendar.tasks.filter(
        (task) => task.recipeId === id && task.stepId === stepId && task.number === number,
      );
      return tasks.reduce((sum, task) => sum + task.areaM2, 0) < whole * (1 - AREA_ROUNDING);
    });
    return missing
      ? [
          gap(
            `Not every coat of "${name}" is in the calendar, so its vapour is not all counted.`,
            'Open the calendar and mend what it names.',
          ),
        ]
      : [];
  });
}

function isLiquid(kind: string): boolean {
  return COAT_STEPS.some((coat) => coat === kind);
}

function gap(message: string, wayOut: string): AirGap {
  return { field: 'calendar', coatId: null, substanceId: null, message, wayOut };
}
