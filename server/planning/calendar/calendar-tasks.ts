import { formatArea } from '../display/format-area.ts';
import type { Problem } from '../problem.ts';
import type { UnitSystem } from '../project-input.ts';
import type { CalendarBatch } from './calendar-batch.ts';
import type { CalendarInput, CalendarPiece, CalendarRecipe } from './calendar-input.ts';
import { type BatchAreaLimit, largestBatchArea } from './largest-batch-area.ts';
import { recipeTasks } from './recipe-tasks.ts';
import { splitBatches } from './split-batches.ts';
import { unknownDrying } from './unknown-drying.ts';
import { workingWindows } from './working-windows.ts';

export interface CalendarTasks {
  readonly batches: readonly CalendarBatch[];
  readonly problems: readonly Problem[];
}

/**
 * Which batches go through the shop, and which tasks does each pass?
 *
 * @param input see calendar-input.ts; areas m2, times minutes
 * @returns batches in a fixed order with their tasks in order, and problems: recipes left out because a drying time is
 *   not known, and pieces too large for a clock
 *
 * Source: a rule of ours. Pieces that get the same recipes on the same faces are shared out over the fewest batches
 * that respect the rack, the working time of each product, the recoat clock and the longest working window. Coated one
 * face at a time, a batch passes all steps on the back and then, dry to handle, all on the show face: as a coat is dry
 * to handle no sooner than it can be recoated, changing faces only once is never slower. Coated on points, both faces
 * are one task. Valid range: any input. Departures: none.
 * Example: 3 pieces of 2 m2, rack 4 m2: two batches, of 2 pieces and 1.
 */
export function calendarTasks(input: CalendarInput): CalendarTasks {
  const { units = 'metric' } = input;
  const problems: Problem[] = [];
  const batches: CalendarBatch[] = [];
  const windows = workingWindows(input);
  const longestMin = windows.reduce((most, span) => Math.max(most, span.toMinute - span.fromMinute), 0);
  const recipes = new Map(input.recipes.map((recipe) => [recipe.id, recipe]));
  const unknown = new Set<string>();
  for (const recipe of input.recipes) {
    if (!input.pieces.some((piece) => isCoatedWith(piece, recipe.id))) continue;
    const found = unknownDrying(recipe);
    problems.push(...found.problems);
    if (found.blocks) unknown.add(recipe.id);
  }

  const groups = new Map<string, CalendarPiece[]>();
  for (const piece of input.pieces) {
    if (piece.count < 1 || unknown.has(piece.showRecipeId) || unknown.has(piece.backRecipeId)) continue;
    if (!recipes.has(piece.showRecipeId) && !recipes.has(piece.backRecipeId)) continue;
    const name = piece.batchName === '' ? '' : `~${piece.batchName}`;
    const key = `${piece.showRecipeId || '-'}+${piece.backRecipeId || '-'}${name}`;
    groups.set(key, [...(groups.get(key) ?? []), piece]);
  }

  for (const [key, pieces] of groups) {
    const show = recipes.get(pieces[0]?.showRecipeId ?? '') ?? null;
    const back = recipes.get(pieces[0]?.backRecipeId ?? '') ?? null;
    const areas = pieces.map((piece) => coatedAreas(piece, show, back));
    const limits = { show: limitOf(show), back: limitOf(back) };
    const shares = splitBatches(
      pieces.map(({ count }) => count),
      [
        {
          limit: Math.min(
            input.rackM2 ?? Number.POSITIVE_INFINITY,
            input.largestBatchM2 ?? Number.POSITIVE_INFINITY,
          ),
          each: pieces.map(footprint),
        },
        { limit: limits.show.areaM2, each: areas.map(({ showM2 }) => showM2) },
        { limit: limits.back.areaM2, each: areas.map(({ backM2 }) => backM2) },
      ],
    );
    for (const [index, piece] of pieces.entries()) {
      const area = areas[index] ?? { showM2: 0, backM2: 0 };
      if (area.showM2 > limits.show.areaM2) problems.push(tooLarge(piece, area.showM2, limits.show, units));
      else if (area.backM2 > limits.back.areaM2)
        problems.push(tooLarge(piece, area.backM2, limits.back, units));
    }
    for (const [number, counts] of shares.entries()) {
      const id = `${key}#${number + 1}`;
      const sum = (of: (index: number) => number): number =>
        counts.reduce((total, count, index) => total + count * of(index), 0);
      const chosen = pieces.flatMap((piece, index) => {
        const count = counts[index] ?? 0;
        return count > 0 ? [{ pieceId: piece.id, count }] : [];
      });
      const readyMinute = Math.max(
        ...pieces.map((piece, index) => ((counts[index] ?? 0) > 0 ? piece.readyMinute : 0)),
      );
      const made = recipeTasks({
        batchId: id,
        show,
        back,
        showM2: sum((index) => areas[index]?.showM2 ?? 0),
        backM2: sum((index) => areas[index]?.backM2 ?? 0),
        readyMinute,
        stepMin: input.stepMin,
      });
      if (made.tasks.length === 0) continue;
      const footprintM2 = sum((index) => footprint(pieces[index] as CalendarPiece));
      batches.push({ id, pieces: chosen, footprintM2, ...made });
    }
  }
  return { batches, problems };

  function limitOf(recipe: CalendarRecipe | null): BatchAreaLimit {
    if (recipe !== null) return largestBatchArea(recipe, longestMin, input.stepMin, input.vapour);
    return { areaM2: Number.POSITIVE_INFINITY, because: 'nothing', stepId: null };
  }
}

function isCoatedWith(piece: CalendarPiece, recipeId: string): boolean {
  return piece.count > 0 && (piece.showRecipeId === recipeId || piece.backRecipeId === recipeId);
}

/** What one piece lays on the rack. */
function footprint(piece: CalendarPiece): number {
  return Math.max(piece.showM2, piece.backM2);
}

/** Area of one task on one piece, m2: on points, both faces and the edges are one task, counted as the show face's. */
function coatedAreas(
  piece: CalendarPiece,
  show: CalendarRecipe | null,
  back: CalendarRecipe | null,
): { readonly showM2: number; readonly backM2: number } {
  if (show !== null && show === back && show.faces === 'points')
    return { showM2: piece.showM2 + piece.backM2 + piece.edgeM2, backM2: 0 };
  return {
    showM2: show === null ? 0 : piece.showM2 + piece.edgeM2,
    backM2: back === null ? 0 : piece.backM2 + (show === null ? piece.edgeM2 : 0),
  };
}

function tooLarge(piece: CalendarPiece, areaM2: number, limit: BatchAreaLimit, units: UnitSystem): Problem {
  const what = {
    nothing: 'nothing',
    'working-time': 'the working time of the product',
    'recoat-clock': 'the time in which the next coat must follow',
    'working-window': 'the longest working window',
    'health-limit': 'the air of the room, under the health limit,',
  }[limit.because];
  const isAir = limit.because === 'health-limit';
  return {
    code: 'batch-too-large',
    severity: isAir ? 'error' : 'warning',
    at: { table: 'parts', id: piece.id, field: null },
    message: `One piece of "${piece.name}" has ${formatArea(areaM2, { units })} to coat, but ${what} is enough for ${formatArea(Math.max(0, limit.areaM2), { units })}.`,
    wayOut: isAir
      ? 'Bring in more fresh air, or choose a product with less solvent: one piece cannot be made smaller.'
      : 'Lay this coat by a faster method, choose a slower product, or have a second person help.',
  };
}
