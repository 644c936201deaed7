import type { CalendarAnswer, CalendarPlan } from '../../../server/http/contract.ts';

export interface BatchNames {
  /** Its recipes, and which of several equal batches it is: "Stained satin, 1 of 2". */
  readonly title: string;
  /** What lies in it: "2 Side, 4 Shelf". */
  readonly parts: string;
}

/** Batches as people call them: by recipe and parts. */
export function batchNames(
  plan: Pick<CalendarPlan, 'tasks' | 'batches'>,
  names: CalendarAnswer['names'],
): ReadonlyMap<string, BatchNames> {
  const recipes = plan.batches.map(({ id }) => {
    const used = plan.tasks.filter(({ batchId }) => batchId === id).map(({ recipeId }) => recipeId);
    return [...new Set(used)].map((recipe) => nonEmpty(names.recipes[recipe], 'recipe')).join(' and ');
  });
  return new Map(
    plan.batches.map(({ id, pieces }, index) => {
      const recipe = recipes[index] ?? '';
      const equal = recipes.filter((other) => other === recipe).length;
      const place = recipes.slice(0, index + 1).filter((other) => other === recipe).length;
      const counts = new Map<string, number>();
      for (const { pieceId, count } of pieces) {
        const name = nonEmpty(names.parts[pieceId], 'part');
        counts.set(name, (counts.get(name) ?? 0) + count);
      }
      const parts = [...counts].map(([name, count]) => `${count} ${name}`);
      return [id, { title: equal > 1 ? `${recipe}, ${place} of ${equal}` : recipe, parts: parts.join(', ') }];
    }),
  );
}

function nonEmpty(name: string | undefined, otherwise: string): string {
  return name === undefined || name === '' ? `${otherwise} without a name` : name;
}
