import type { GroupField } from './list-view.ts';

/** How each project's list was grouped when it was last looked at in this browser. */

export interface Grouping {
  readonly groupBy: GroupField | null;
  readonly closed: readonly string[];
}

const KEY = 'plywright.part-groups';
/** Counted up when the stored form changes; another number is not read. */
const VERSION = 1;
/** Projects remembered; the one longest not regrouped is forgotten first. */
const PROJECTS_KEPT = 40;
const UNGROUPED: Grouping = { groupBy: null, closed: [] };

export function rememberedGrouping(projectId: string): Grouping {
  return readGroupings(localStorage.getItem(KEY)).get(projectId) ?? UNGROUPED;
}

export function rememberGrouping(projectId: string, grouping: Grouping): void {
  const projects = new Map(readGroupings(localStorage.getItem(KEY)));
  projects.delete(projectId);
  if (grouping.groupBy !== null) projects.set(projectId, grouping);
  const newest = [...projects].slice(-PROJECTS_KEPT);
  localStorage.setItem(KEY, JSON.stringify({ version: VERSION, projects: newest }));
}

/** Reads what was stored; whatever of it makes no sense is as if it had never been stored. */
export function readGroupings(text: string | null): ReadonlyMap<string, Grouping> {
  const stored = parsed(text) as { version?: unknown; projects?: unknown } | null;
  if (stored?.version !== VERSION || !Array.isArray(stored.projects)) return new Map();
  return new Map(
    (stored.projects as unknown[]).flatMap((entry): [string, Grouping][] => {
      if (!Array.isArray(entry)) return [];
      const [id, grouping] = entry as [unknown, Partial<Grouping> | null];
      const by = grouping?.groupBy;
      if (typeof id !== 'string' || (by !== 'section' && by !== 'materialId')) return [];
      const closed = Array.isArray(grouping?.closed) ? grouping.closed : [];
      return [[id, { groupBy: by, closed: closed.filter((value) => typeof value === 'string') }]];
    }),
  );
}

function parsed(text: string | null): unknown {
  try {
    return text === null ? null : JSON.parse(text);
  } catch {
    return null;
  }
}
