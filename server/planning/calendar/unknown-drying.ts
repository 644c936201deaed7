import type { Problem } from '../problem.ts';
import type { CalendarRecipe } from './calendar-input.ts';

/**
 * Which drying figures does the calendar miss for a recipe?
 *
 * @param recipe its steps with label figures, minutes
 * @returns problems, and whether the recipe cannot be planned without them
 *
 * Source: a rule of ours. Valid range: any recipe. Departures: a missing recoat rule is replaced by "when dry to
 * handle", with a warning; a missing touch-dry time by that of handling, which is later and so on the side of caution;
 * a missing time to handle cannot be replaced. Example: a topcoat without a time to handle blocks its recipe.
 */
export function unknownDrying(recipe: CalendarRecipe): {
  readonly problems: readonly Problem[];
  readonly blocks: boolean;
} {
  const problems: Problem[] = [];
  let blocks = false;
  let coat: CalendarRecipe['steps'][number] | null = null;
  for (const step of recipe.steps) {
    if (step.kind === 'cure' && coat !== null && coat.coat?.cureMin === null)
      problems.push({
        code: 'cure-unknown',
        severity: 'warning',
        at: { table: 'steps', id: step.id, field: null },
        message: `"${recipe.name}" waits for "${coat.name}" to cure, but its curing time is not known.`,
        wayOut: 'Enter the curing time from the label in the catalogue.',
      });
    if (step.kind === 'cure' || step.kind === 'sand' || step.kind === 'scuff' || step.kind === 'dust')
      continue;
    if (coat?.id === step.id) continue;
    coat = step;
    if (step.coat === null || step.coat.handleDryMin === null) {
      blocks = true;
      problems.push({
        code: 'drying-time-missing',
        severity: 'error',
        at: { table: 'steps', id: step.id, field: null },
        message: `"${recipe.name}" cannot be planned: when "${step.name || step.kind}" is dry to handle is not known.`,
        wayOut: 'Enter the time until it is dry to handle, from the label, in the catalogue.',
      });
    } else if (step.coat.recoat.length === 0)
      problems.push({
        code: 'recoat-unknown',
        severity: 'warning',
        at: { table: 'steps', id: step.id, field: null },
        message: `When "${step.name || step.kind}" may be recoated is not known, so the calendar waits until it is dry to handle.`,
        wayOut: 'Enter the recoat times from the label in the catalogue.',
      });
  }
  return { problems, blocks };
}
