import type { Change, PreviewRow } from '../../server/http/contract.ts';

/** The temporary id of the first part of an import, by which its place is found afterwards. */
export const FIRST_IMPORTED = 'first-imported';

/** The changes that add the rows of a preview at the end of the part list; one request, one step of undo. */
export function partInserts(rows: readonly PreviewRow[]): Change[] {
  return rows.map((row, index) => {
    const values = {
      name: row.name.text,
      section: row.section.text,
      quantity: row.quantity.text,
      length: row.length.text,
      width: row.width.text,
      materialId: row.material.text,
      grain: row.grain.text,
      edgeFront: row.edges.front.text,
      edgeBack: row.edges.back.text,
      edgeLeft: row.edges.left.text,
      edgeRight: row.edges.right.text,
      showRecipeId: row.showFace.text,
      backRecipeId: row.backFace.text,
      note: row.note.text,
      shape: row.shape.text,
      radiusFrontLeft: row.corners.frontLeft.text,
      radiusFrontRight: row.corners.frontRight.text,
      radiusBackLeft: row.corners.backLeft.text,
      radiusBackRight: row.corners.backRight.text,
    };
    const filled = Object.fromEntries(Object.entries(values).filter(([, text]) => text !== ''));
    const change = { op: 'insert', table: 'parts', values: filled } as const;
    return index === 0 ? { ...change, tempId: FIRST_IMPORTED } : change;
  });
}

/** "34 parts" */
export function partsWords(count: number): string {
  return count === 1 ? '1 part' : `${count} parts`;
}
