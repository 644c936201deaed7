import type { JobPiece, SheetJob } from './sheet-job.ts';

/** What makes a piece come early: its area, its longer side, its length or its width, largest first. */
export type PieceOrder = 'area' | 'longer-side' | 'length' | 'width';

/** Every piece once, as indices of the job's pieces, in the given order; equal ones stay together. */
export function piecesBySize(job: SheetJob, order: PieceOrder): number[] {
  const size = job.pieces.map((piece) => sizeOf(piece, order));
  const kinds = job.pieces.map((_, index) => index);
  kinds.sort((left, right) => (size[right] as number) - (size[left] as number) || left - right);
  const list: number[] = [];
  for (const kind of kinds)
    for (let copy = 0; copy < (job.pieces[kind] as JobPiece).count; copy++) list.push(kind);
  return list;
}

function sizeOf(piece: JobPiece, order: PieceOrder): number {
  if (order === 'area') return piece.length * piece.width;
  if (order === 'longer-side') return Math.max(piece.length, piece.width);
  return order === 'length' ? piece.length : piece.width;
}
