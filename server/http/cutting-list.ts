import { type PiecePlace, readCutPieces } from '../../db/cut-pieces.repository.ts';
import { keptFrom } from '../planning/cutting/begun/kept-from.ts';
import { keptOffcuts } from '../planning/cutting/begun/kept-offcuts.ts';
import { cutOrder } from '../planning/cutting/cut-order.ts';
import { layoutKey } from '../planning/cutting/layout-key.ts';
import type { CutNode } from '../planning/plan-output.ts';
import type { AppContext } from './app-context.ts';
import type { CuttingAnswer, CuttingLayout } from './contract.ts';

/** How every layout of a project's plan is sawn, and which of its pieces are ticked as cut. */
export function cuttingList({ db, plans }: AppContext, projectId: number): CuttingAnswer {
  const { project, plan } = plans.current(projectId);
  const { kerfMm } = project.settings;
  const onHand = new Set(project.rows.onHand.map((row) => row.keptFrom));
  const ticked = byLayout(readCutPieces(db, projectId));
  const layouts = plan.materials.flatMap((material) =>
    material.layouts.map((layout): CuttingLayout => {
      const key = layoutKey(material.id, layout, kerfMm);
      const parts = partsOf(layout.cut);
      return {
        materialId: material.id,
        layoutId: layout.id,
        key,
        sheets: layout.count,
        parts,
        cuts: cutOrder(layout, kerfMm),
        offcuts: keptOffcuts(layout, material.kind).map((offcut) => ({
          ...offcut,
          kept: Array.from({ length: layout.count }, (_, sheet) => sheet).filter((sheet) =>
            onHand.has(keptFrom(key, sheet, offcut.lengthMm, offcut.widthMm)),
          ),
        })),
        done: (ticked.get(key) ?? []).flatMap((place) =>
          isIn(place, layout.count, parts.length) ? [{ sheet: place.sheet, piece: place.piece }] : [],
        ),
      };
    }),
  );
  const shown = layouts.reduce((sum, { done }) => sum + done.length, 0);
  const all = [...ticked.values()].reduce((sum, places) => sum + places.length, 0);
  return { revision: project.revision, layouts, elsewhere: all - shown };
}

export function isIn(
  { sheet, piece }: Pick<PiecePlace, 'sheet' | 'piece'>,
  sheets: number,
  pieces: number,
): boolean {
  return sheet < sheets && piece < pieces;
}

function partsOf(node: CutNode): string[] {
  if (node.type === 'split') return node.children.flatMap(partsOf);
  return node.type === 'part' ? [node.partId] : [];
}

function byLayout(places: readonly PiecePlace[]): ReadonlyMap<string, readonly PiecePlace[]> {
  const grouped = new Map<string, PiecePlace[]>();
  for (const place of places) {
    const known = grouped.get(place.layout);
    if (known === undefined) grouped.set(place.layout, [place]);
    else known.push(place);
  }
  return grouped;
}
