import type { Problem } from '../problem.ts';
import type { PartInput } from '../project-input.ts';
import { partProblem } from './part-problem.ts';

/**
 * Do the two faces of a part get a different number of film-building coats?
 *
 * `coats`: film-building coats per recipe id. Result: one note at the face with fewer coats, or nothing. A recipe the
 * project does not have is not judged here. Source: trade forum threads on plywood doors that twisted after unequal
 * finishing (WOODWEB, "Twist in Plywood Doors"; Fine Woodworking forum, "Warped cabinet doors"): same finish, same
 * number of coats on both faces.
 *
 * Example: three coats on the show face and none on the back is a note.
 */
export function unbalancedFaces(row: PartInput, coats: ReadonlyMap<string, number>): Problem[] {
  const coatsOf = (recipeId: string): number | undefined => (recipeId === '' ? 0 : coats.get(recipeId));
  const show = coatsOf(row.showRecipeId);
  const back = coatsOf(row.backRecipeId);
  if (show === undefined || back === undefined || show === back) return [];
  const field = show < back ? 'showRecipeId' : 'backRecipeId';
  const words = (count: number) => (count === 0 ? 'none' : `${count}`);
  return [
    partProblem(
      row,
      field,
      {
        code: 'faces-unbalanced',
        message: `Of film-building coats the show face gets ${words(show)} and the back face ${words(back)}; a panel that is free to move can warp.`,
        wayOut: 'Give both faces the same number of coats, or leave it where the part is held flat.',
      },
      'note',
    ),
  ];
}
