import { markPieces, type PiecePlace, readCutPieces } from '../../db/cut-pieces.repository.ts';
import type { AppContext } from './app-context.ts';
import { readBegunPlans, writeBegunPlan } from './begun-plans.ts';

/** Marks pieces of a material's plan as cut, or as not cut; from the first tick on its sheets stay as they are. */
export function markCut(
  { db, plans, cutting, now }: AppContext,
  projectId: number,
  materialId: string,
  pieces: readonly PiecePlace[],
  cut: boolean,
): void {
  const { project, plan } = plans.current(projectId);
  const material = plan.materials.find(({ id }) => id === materialId);
  const begun = (): string =>
    JSON.stringify([
      readBegunPlans(db, projectId),
      [...new Set(readCutPieces(db, projectId).map(({ layout, sheet }) => `${layout} ${sheet}`))],
    ]);
  const before = begun();
  db.transaction(() => {
    markPieces(db, projectId, pieces, cut, now().toISOString());
    if (material !== undefined) writeBegunPlan(db, projectId, material, project.settings.kerfMm);
  })();
  if (begun() !== before) cutting.begun(projectId, plan.materials);
}
