import type { Database } from 'better-sqlite3';
import { readBegunLayouts, replaceBegunLayouts } from '../../db/begun-layouts.repository.ts';
import { readCutPieces } from '../../db/cut-pieces.repository.ts';
import { layoutKey } from '../planning/cutting/layout-key.ts';
import type { MaterialPlan, StockLayout } from '../planning/plan-output.ts';
import type { BegunPlan } from '../planning/project-input.ts';

/** The plans of a project whose sheets are being cut, as they were at the last tick. */
export function readBegunPlans(db: Database, projectId: number): BegunPlan[] {
  const plans = new Map<string, BegunPlan['layouts'][number][]>();
  for (const { materialId, layout: key, content, begun } of readBegunLayouts(db, projectId)) {
    const layouts = plans.get(materialId) ?? [];
    // A row that was tampered with no longer bears its own key, and is left alone by the plan.
    layouts.push({ key, begun, layout: JSON.parse(content) as StockLayout });
    plans.set(materialId, layouts);
  }
  return [...plans].map(([materialId, layouts]) => ({
    materialId,
    layouts: layouts.sort((a, b) => Number(a.layout.id) - Number(b.layout.id)),
  }));
}

/** Remembers the plan of a material as it is being cut; forgets it once no piece of it is ticked any more. */
export function writeBegunPlan(
  db: Database,
  projectId: number,
  material: MaterialPlan,
  kerfMm: number,
): void {
  const ticked = new Set(readCutPieces(db, projectId).map(({ layout }) => layout));
  const layouts = material.layouts.map((layout) => ({
    layout: layoutKey(material.id, layout, kerfMm),
    content: JSON.stringify(layout),
  }));
  const isBegun = layouts.some(({ layout }) => ticked.has(layout));
  replaceBegunLayouts(db, projectId, material.id, isBegun ? layouts : []);
}
