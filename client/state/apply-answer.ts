import type { ChangeAnswer, ProjectRows, ProjectState, RowTable } from '../../server/http/contract.ts';

type AnyRow = { readonly id: string; readonly position: number };

/**
 * The project after an edit: the rows and part figures the answer names are put in by id, the rest is kept as it
 * was (the same objects, so that what did not change is seen not to have changed).
 */
export function applyAnswer(project: ProjectState, answer: ChangeAnswer): ProjectState {
  const rows = { ...project.rows } as { -readonly [T in RowTable]: ProjectRows[T] };
  const touched = new Set([...Object.keys(answer.changed), ...Object.keys(answer.removed)]) as Set<RowTable>;
  for (const table of touched) {
    const merged = mergeRows(project.rows[table], answer.changed[table] ?? [], answer.removed[table] ?? []);
    (rows as Record<RowTable, readonly AnyRow[]>)[table] = merged;
  }
  return {
    id: project.id,
    revision: answer.revision,
    settings: sameSettings(project.settings, answer.settings) ? project.settings : answer.settings,
    rows,
    plan: { ...answer.plan, parts: mergePartPlans(project, answer, rows.parts) },
    canUndo: answer.canUndo,
    canRedo: answer.canRedo,
    undoLabel: answer.undoLabel,
    redoLabel: answer.redoLabel,
  };
}

function mergeRows(
  before: readonly AnyRow[],
  changed: readonly AnyRow[],
  removed: readonly string[],
): readonly AnyRow[] {
  const byId = new Map(before.map((row) => [row.id, row]));
  for (const id of removed) byId.delete(id);
  for (const row of changed) byId.set(row.id, row);
  return [...byId.values()].sort((a, b) => a.position - b.position);
}

function sameSettings(a: ProjectState['settings'], b: ProjectState['settings']): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** In the order of the part list, as in a plan that is read whole. */
function mergePartPlans(
  project: ProjectState,
  answer: ChangeAnswer,
  order: ProjectRows['parts'],
): ProjectState['plan']['parts'] {
  const byId = new Map(project.plan.parts.map((part) => [part.id, part]));
  for (const id of answer.removedPartPlans) byId.delete(id);
  for (const part of answer.plan.parts) byId.set(part.id, part);
  return order.flatMap(({ id }) => byId.get(id) ?? []);
}
