import type { Figure } from '../figure.ts';
import type { PartPlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { PartInput, ProjectInput } from '../project-input.ts';
import { type Summand, sumFigure } from './sum-figure.ts';
import { sumKnown } from './sum-known.ts';

export interface RecipeArea {
  readonly showM2: Figure;
  readonly backM2: Figure;
  readonly edgeM2: Figure;
  readonly areaM2: Figure;
  /** True when at least one part row names the recipe. */
  readonly used: boolean;
}

interface Gathered {
  readonly show: Summand[];
  readonly back: Summand[];
  readonly edge: Summand[];
}

/**
 * Which area does each recipe cover?
 *
 * area = sum over the part rows of quantity x (show face + back face + seen edges that get it)
 *
 * @param parts planned parts; areas in m2 per piece
 * @returns per recipe id the areas in m2; seen edges follow the show face's recipe, or the back's when it has none.
 *   A part row of unknown size or quantity is left out, and the notes say so.
 *
 * No source: a definition of ours, following the project document.
 * Example: 4 shelves of 0.27 m2 with both faces and 0.03 m2 of seen edges: 4 x (0.27 + 0.27 + 0.03) = 2.28 m2.
 */
export function recipeAreas(
  input: ProjectInput,
  parts: readonly PartPlan[],
): { readonly areas: ReadonlyMap<string, RecipeArea>; readonly problems: readonly Problem[] } {
  const gathered = new Map<string, Gathered>(
    input.recipes.map(({ id }) => [id, { show: [], back: [], edge: [] }]),
  );
  const rows = new Map(input.parts.map((part) => [part.id, part]));
  const problems: Problem[] = [];
  for (const plan of parts) {
    const row = rows.get(plan.id);
    if (row === undefined) throw new RangeError(`recipeAreas: part ${plan.id} is not in the project`);
    const pieces = plan.quantity.value;
    const summand = (area: Figure, field: string): Summand => ({
      name: `${row.name || `part ${row.id}`}, ${pieces ?? 'an unknown number of'} pcs`,
      value: pieces === null || area.value === null ? null : pieces * area.value,
      from: `parts/${row.id}/${field}`,
    });
    for (const field of ['showRecipeId', 'backRecipeId'] as const)
      if (row[field] !== '' && !gathered.has(row[field])) problems.push(recipeUnknown(row, field));
    gathered.get(row.showRecipeId)?.show.push(summand(plan.showFaceM2, 'showFaceM2'));
    gathered.get(row.backRecipeId)?.back.push(summand(plan.backFaceM2, 'backFaceM2'));
    if (plan.seenEdgeM2.value !== 0)
      gathered
        .get(row.showRecipeId === '' ? row.backRecipeId : row.showRecipeId)
        ?.edge.push(summand(plan.seenEdgeM2, 'seenEdgeM2'));
  }
  return {
    areas: new Map([...gathered].map(([recipeId, summands]) => [recipeId, areaOf(recipeId, summands)])),
    problems,
  };
}

function areaOf(recipeId: string, { show, back, edge }: Gathered): RecipeArea {
  const sum = (rule: string, summands: readonly Summand[]): Figure =>
    sumFigure({ rule, unit: 'm2', noun: 'part areas', summands });
  const showM2 = sum('show faces = sum of quantity x show face', show);
  const backM2 = sum('back faces = sum of quantity x back face', back);
  const edgeM2 = sum('seen edges = sum of quantity x seen edges', edge);
  const total = sumKnown([...show, ...back, ...edge], 'part areas');
  return {
    showM2,
    backM2,
    edgeM2,
    areaM2: {
      value: total.value,
      unit: 'm2',
      working: {
        rule: 'area = show faces + back faces + seen edges',
        inputs: [
          { name: 'show faces', value: showM2.value, unit: 'm2', from: `recipes/${recipeId}/showM2` },
          { name: 'back faces', value: backM2.value, unit: 'm2', from: `recipes/${recipeId}/backM2` },
          { name: 'seen edges', value: edgeM2.value, unit: 'm2', from: `recipes/${recipeId}/edgeM2` },
        ],
        ...(total.notes.length === 0 ? {} : { notes: total.notes }),
      },
    },
    used: show.length + back.length > 0,
  };
}

function recipeUnknown(row: PartInput, field: 'showRecipeId' | 'backRecipeId'): Problem {
  return {
    code: 'recipe-unknown',
    severity: 'error',
    at: { table: 'parts', id: row.id, field },
    message: `Part "${row.name}" names the recipe "${row[field]}", which this project does not have.`,
    wayOut: 'Choose a recipe of this project, or leave the face unfinished.',
  };
}
