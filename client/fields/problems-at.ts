import type { Problem } from '../../server/planning/problem.ts';
import { type Place, placeKey } from './place.ts';

const RANK = { error: 0, warning: 1, note: 2 } as const;
const NONE: readonly Problem[] = [];
const indexes = new WeakMap<readonly Problem[], ReadonlyMap<string, readonly Problem[]>>();

/** The plan's problems at one field, worst first. */
export function problemsAt(problems: readonly Problem[], place: Place): readonly Problem[] {
  return indexOf(problems).get(placeKey(place)) ?? NONE;
}

function indexOf(problems: readonly Problem[]): ReadonlyMap<string, readonly Problem[]> {
  const known = indexes.get(problems);
  if (known !== undefined) return known;
  const index = new Map<string, Problem[]>();
  for (const problem of [...problems].sort((a, b) => RANK[a.severity] - RANK[b.severity])) {
    const key = placeKey(problem.at);
    const list = index.get(key);
    if (list === undefined) index.set(key, [problem]);
    else list.push(problem);
  }
  indexes.set(problems, index);
  return index;
}
