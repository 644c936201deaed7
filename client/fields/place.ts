import type { ProblemPlace } from '../../server/planning/problem.ts';

/** The one value a field shows and changes, named as problems name it; of suppliers no problem speaks. */
export interface Place {
  readonly table: ProblemPlace['table'] | 'suppliers';
  readonly id: string | null;
  readonly field: string;
}

export function placeKey(place: ProblemPlace | Place): string {
  return `${place.table}/${place.id ?? ''}/${place.field ?? ''}`;
}

/** The same as an element id: no slashes, and no two places share one. */
export function placeElementId(place: Place, use = 'field'): string {
  return `${use}-${place.table}-${place.id ?? 'all'}-${place.field}`;
}
