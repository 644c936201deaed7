import { EDGE_ORDER } from '../../drawing/edge-order.ts';
import { recipeName } from '../../drawing/part-drawing-of.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';

/** What stands on the label of one piece. */
export interface PieceLabel {
  readonly partId: string;
  readonly name: string;
  readonly section: string;
  /** "2 of 4" */
  readonly piece: string;
  readonly cutSize: string;
  /** Finished size, where a band is deducted from the cut; empty otherwise. */
  readonly finishedSize: string;
  readonly material: string;
  /** "front, left: Birch veneer"; a line for each band, or "no edge is banded". */
  readonly edges: readonly string[];
  readonly finish: string;
}

/** Sizes nearer to one another than this are one, mm. Ours. */
const SAME_MM = 0.01;

/** A label for every piece that is cut from a sheet or a board, in the order of the part list. */
export function pieceLabels(book: ScreenBook): readonly PieceLabel[] {
  const { project, formats, products } = book;
  const plans = new Map(project.plan.parts.map((plan) => [plan.id, plan]));
  const laid = new Set(project.plan.materials.map(({ id }) => id));
  return project.rows.parts.flatMap((row) => {
    const plan = plans.get(row.id);
    if (plan === undefined || !laid.has(row.materialId)) return [];
    const { quantity, cutLengthMm, cutWidthMm, lengthMm, widthMm } = plan;
    if (quantity === null || cutLengthMm === null || cutWidthMm === null) return [];
    const size = (length: number, width: number): string =>
      `${formats.length(length)} × ${formats.length(width)}`;
    const same =
      lengthMm === null ||
      widthMm === null ||
      (Math.abs(lengthMm - cutLengthMm) < SAME_MM && Math.abs(widthMm - cutWidthMm) < SAME_MM);
    const show = recipeName(book, row.showRecipeId);
    const back = recipeName(book, row.backRecipeId);
    const label = {
      partId: row.id,
      name: row.name === '' ? 'part without a name' : row.name,
      section: row.section,
      cutSize: size(cutLengthMm, cutWidthMm),
      finishedSize: same ? '' : size(lengthMm, widthMm),
      material: products.get(row.materialId)?.name ?? row.materialId,
      edges: edgeLines(book, plan),
      finish: show === back ? show : `show face ${show}, back ${back}`,
    };
    return Array.from({ length: quantity }, (_, index) => ({
      ...label,
      piece: `${index + 1} of ${quantity}`,
    }));
  });
}

function edgeLines({ products }: ScreenBook, plan: ScreenBook['project']['plan']['parts'][number]): string[] {
  const byBand = new Map<string, string[]>();
  for (const edge of EDGE_ORDER) {
    const treatment = plan.edges.find(({ id }) => id === edge)?.treatment ?? 'hidden';
    if (treatment === 'hidden' || treatment === 'bare') continue;
    byBand.set(treatment, [...(byBand.get(treatment) ?? []), edge]);
  }
  if (byBand.size === 0) return ['no edge is banded'];
  return [...byBand].map(([id, edges]) => `${edges.join(', ')}: ${products.get(id)?.shortName ?? id}`);
}
