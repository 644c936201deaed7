import type { CutNode, StockLayout } from '../../server/planning/plan-output.ts';

/** One rectangle of a cutting drawing, in percent of the stock's length and width, from its top left. */
export interface SheetPiece {
  readonly type: 'part' | 'offcut';
  readonly partId: string | null;
  readonly turned: boolean;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly lengthMm: number;
  readonly widthMm: number;
}

/**
 * Where each piece of a layout lies. The tree says what is cut from what; pieces of one cut stand side by side with
 * a saw cut between. What the tree leaves of the full stock is trim, half of it on each side.
 */
export function sheetPieces(
  layout: Pick<StockLayout, 'lengthMm' | 'widthMm' | 'cut'>,
  kerfMm: number,
): readonly SheetPiece[] {
  const pieces: SheetPiece[] = [];
  const across = (mm: number): number => (mm / layout.lengthMm) * 100;
  const down = (mm: number): number => (mm / layout.widthMm) * 100;

  function place(node: CutNode, xMm: number, yMm: number): void {
    if (node.type === 'split') {
      let offset = 0;
      for (const child of node.children) {
        place(
          child,
          node.along === 'length' ? xMm + offset : xMm,
          node.along === 'width' ? yMm + offset : yMm,
        );
        offset += (node.along === 'length' ? child.lengthMm : child.widthMm) + kerfMm;
      }
      return;
    }
    pieces.push({
      type: node.type,
      partId: node.type === 'part' ? node.partId : null,
      turned: node.type === 'part' && node.turned,
      x: across(xMm),
      y: down(yMm),
      width: across(node.lengthMm),
      height: down(node.widthMm),
      lengthMm: node.lengthMm,
      widthMm: node.widthMm,
    });
  }

  place(layout.cut, (layout.lengthMm - layout.cut.lengthMm) / 2, (layout.widthMm - layout.cut.widthMm) / 2);
  return pieces;
}
