import type { CutNode, MaterialPlan } from '../../../server/planning/plan-output.ts';

/** What was wished of a plan beside that it can be cut, checked apart from the planner. */
export interface CutWishes {
  readonly kerfMm: number;
  /** Most stages of cuts, trimming a part not counted. */
  readonly stages: number | null;
  /** Per match: its part ids in their order, one for each piece. */
  readonly matches: readonly (readonly string[])[];
}

const SAME_MM = 0.06;

interface Laid {
  readonly partId: string;
  readonly x: number;
  readonly y: number;
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** Every wish that is not met, in words. */
export function brokenWishes({ layouts }: Pick<MaterialPlan, 'layouts'>, wishes: CutWishes): string[] {
  const broken: string[] = [];
  for (const { id, cut } of layouts) {
    const stages = stagesOf(cut, null);
    if (wishes.stages !== null && stages > wishes.stages)
      broken.push(`layout ${id} takes ${stages} stages of cuts`);
  }
  for (const match of wishes.matches) {
    const isThere = layouts.some(({ cut, count }) => {
      const own: Laid[] = [];
      collect(cut, 0, 0, wishes.kerfMm, own);
      const pieces = own.filter(({ partId }) => match.includes(partId));
      return count === 1 && runsThrough(pieces, match, wishes.kerfMm);
    });
    if (!isThere) broken.push(`match ${match.join()} does not lie side by side in order`);
  }
  return broken;
}

/** Changes of direction on the way down; a cut that only takes waste off one part is none. */
function stagesOf(node: CutNode, under: 'length' | 'width' | null): number {
  if (node.type !== 'split' || isTrim(node)) return 0;
  const here = node.along === under ? 0 : 1;
  return here + Math.max(...node.children.map((child) => stagesOf(child, node.along)));
}

function isTrim(node: Extract<CutNode, { type: 'split' }>): boolean {
  const kept = node.children.filter(({ type }) => type !== 'offcut');
  const [only] = kept;
  return kept.length === 1 && (only?.type === 'part' || (only?.type === 'split' && isTrim(only)));
}

function collect(node: CutNode, x: number, y: number, kerfMm: number, laid: Laid[]): void {
  if (node.type === 'part')
    laid.push({ partId: node.partId, x, y, lengthMm: node.lengthMm, widthMm: node.widthMm });
  if (node.type !== 'split') return;
  let at = node.along === 'length' ? x : y;
  for (const child of node.children) {
    collect(child, node.along === 'length' ? at : x, node.along === 'length' ? y : at, kerfMm, laid);
    at += (node.along === 'length' ? child.lengthMm : child.widthMm) + kerfMm;
  }
}

/** One after another along the sheet, or one above another, a kerf between. */
function runsThrough(pieces: readonly Laid[], match: readonly string[], kerfMm: number): boolean {
  return (['x', 'y'] as const).some((axis) => {
    const across = axis === 'x' ? 'y' : 'x';
    const size = axis === 'x' ? 'lengthMm' : 'widthMm';
    const sorted = [...pieces].sort((one, other) => one[axis] - other[axis]);
    return (
      sorted.map(({ partId }) => partId).join() === match.join() &&
      sorted.every((piece, at) => {
        const before = sorted[at - 1];
        return (
          before === undefined ||
          (Math.abs(piece[across] - before[across]) < SAME_MM &&
            Math.abs(piece[axis] - before[axis] - before[size] - kerfMm) < SAME_MM)
        );
      })
    );
  });
}
