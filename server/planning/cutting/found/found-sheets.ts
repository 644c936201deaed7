import type { FoundSheet } from '../../project-input.ts';
import type { OpenSheet } from '../sheet-2d/open-sheet.ts';
import { foundCut } from './found-tree.ts';

/**
 * The sheets of a search as plain data, equal ones counted.
 *
 * `sheets`: of a job that is a question's. Result: a found plan. No source: another form of the same.
 */
export function foundOfSheets(sheets: readonly OpenSheet[]): FoundSheet[] {
  const counted = new Map<string, FoundSheet & { count: number }>();
  for (const { stock, root } of sheets) {
    if (root === null) continue;
    const cut = foundCut(root);
    const key = `${stock} ${JSON.stringify(cut)}`;
    const known = counted.get(key);
    if (known === undefined) counted.set(key, { stock, count: 1, cut });
    else known.count++;
  }
  return [...counted.values()];
}
