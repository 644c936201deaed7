import type { PartPlanView, PartRow } from '../../server/http/contract.ts';
import type { EdgeName } from '../../server/planning/project-input.ts';
import type { ScreenBook } from '../fields/screen-book.ts';
import { productSwatch } from '../screens/parts/product-swatch.ts';
import { EDGE_ORDER } from './edge-order.ts';
import { finishTone } from './finish-tone.ts';
import type { DrawnEdge, PartDrawing } from './part-drawing.ts';

/** What is drawn of a part; null until its length and width are known. */
export function partDrawingOf(book: ScreenBook, row: PartRow, plan: PartPlanView): PartDrawing | null {
  const { lengthMm, widthMm } = plan;
  if (lengthMm === null || widthMm === null || !(lengthMm > 0 && widthMm > 0)) return null;
  const { formats } = book;
  const edges = Object.fromEntries(
    EDGE_ORDER.map((edge) => [edge, drawnEdge(book, plan, edge)]),
  ) as unknown as Record<EdgeName, DrawnEdge>;
  return {
    id: row.id,
    name: row.name === '' ? 'Part' : row.name,
    lengthMm,
    widthMm,
    cornersMm: plan.cornersMm,
    grain: row.grain,
    edges,
    showTone: finishTone(book, row.showRecipeId),
    backTone: finishTone(book, row.backRecipeId),
    lengthText: formats.length(lengthMm),
    widthText: formats.length(widthMm),
    description: described(book, row, edges, `${formats.length(lengthMm)} by ${formats.length(widthMm)}`),
  };
}

function drawnEdge(book: ScreenBook, plan: PartPlanView, edge: EdgeName): DrawnEdge {
  const treatment = plan.edges.find(({ id }) => id === edge)?.treatment ?? 'hidden';
  if (treatment === 'hidden') return { kind: 'hidden', band: '', tone: '' };
  if (treatment === 'bare') return { kind: 'bare', band: '', tone: '' };
  const product = book.products.get(treatment);
  return {
    kind: 'banded',
    band: product?.shortName ?? treatment,
    tone: product === undefined ? 'var(--birch)' : productSwatch(product),
  };
}

const GRAIN_WORDS = {
  along: 'Grain runs along the length.',
  across: 'Grain runs across, along the width.',
  free: 'The part may be turned; no grain direction.',
} as const;

function described(
  book: ScreenBook,
  row: PartRow,
  edges: Readonly<Record<EdgeName, DrawnEdge>>,
  size: string,
): string {
  const edgeWords = EDGE_ORDER.map((edge) => {
    const { kind, band } = edges[edge];
    return `${edge} edge ${kind === 'banded' ? `banded with ${band}` : kind}`;
  }).join(', ');
  return `${size}; ${edgeWords}. Show face: ${recipeName(book, row.showRecipeId)}. Back face: ${recipeName(book, row.backRecipeId)}. ${GRAIN_WORDS[row.grain]}`;
}

/** A recipe as a face carries it: its name, or that the face stays raw. */
export function recipeName(book: ScreenBook, recipeId: string): string {
  if (recipeId === '') return 'no finish';
  return book.project.rows.recipes.find(({ id }) => id === recipeId)?.name ?? 'a recipe that is gone';
}
