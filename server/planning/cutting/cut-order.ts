import type { CutNode, StockLayout } from '../plan-output.ts';
import { LEAST_OFFCUT_MM } from './constants.ts';

/** One straight saw cut, from edge to edge of the piece that lies on the saw. */
export interface SawCut {
  /** From 1, in the order of sawing. */
  readonly number: number;
  /** `trim` takes the factory edge off; `rip` runs along the sheet's length, `crosscut` across it. */
  readonly kind: 'trim' | 'rip' | 'crosscut';
  /** Which way the blade runs. */
  readonly runs: 'length' | 'width';
  /** What lies on the saw: null for the whole sheet, else the strip by its number, from 1. */
  readonly strip: number | null;
  /** From the edge last cut to the blade: what the fence or the stop is set to, mm. */
  readonly settingMm: number;
  /** Where the blade's near side stands, measured from the stock's top (a run along the length) or left edge, mm. */
  readonly atMm: number;
  /** Where the cut begins and ends along its run, from the stock's left or top edge, mm. */
  readonly fromMm: number;
  readonly toMm: number;
  /** From one end of the trimmed sheet to the other. */
  readonly full: boolean;
  /** What is free afterwards: the piece cut off, and after the last cut of a row also the one left. */
  readonly frees: readonly FreedPiece[];
}

/** `piece` is the part's place among the parts of the layout, in the order of the tree, from 0. */
export type FreedPiece =
  | {
      readonly type: 'part';
      readonly piece: number;
      readonly partId: string;
      readonly lengthMm: number;
      readonly widthMm: number;
    }
  | { readonly type: 'strip'; readonly strip: number; readonly lengthMm: number; readonly widthMm: number }
  | { readonly type: 'offcut'; readonly lengthMm: number; readonly widthMm: number };

type Unnumbered = Omit<SawCut, 'number'>;

/**
 * The saw cuts of one sheet or board in the order they are made.
 *
 * `layout`: the stock and its tree of cuts, mm. `kerfMm`: width of a cut. Result: the trim cuts, then the tree from its
 * root: all cuts of a split before anything is cut out of the strips that it frees, then strip by strip. A split of n
 * children has n - 1 cuts, and one more where the last child must be cut off a remainder no wider than the kerf.
 * Source: common practice, no source (whole strips first, so that every cut runs from edge to edge).
 * Example: a 100 mm board with parts of 48 and 40 and a kerf of 4 has two cuts: at 48, and at 40 off the remaining 48.
 */
export function cutOrder(
  layout: Pick<StockLayout, 'lengthMm' | 'widthMm' | 'cut'>,
  kerfMm: number,
): readonly SawCut[] {
  const { cut: root } = layout;
  const trimX = (layout.lengthMm - root.lengthMm) / 2;
  const trimY = (layout.widthMm - root.widthMm) / 2;
  const cuts = trimCuts(layout, trimX, trimY, kerfMm);
  let strips = 0;

  function freed(node: CutNode, piece: number): FreedPiece {
    const { type, lengthMm, widthMm } = node;
    if (type === 'part') return { type, piece, partId: node.partId, lengthMm, widthMm };
    if (type === 'offcut') return { type, lengthMm, widthMm };
    strips += 1;
    return { type: 'strip', strip: strips, lengthMm, widthMm };
  }

  /** `piece`: the place of the node's first part. */
  function cutUp(node: CutNode, strip: number | null, xMm: number, yMm: number, piece: number): void {
    if (node.type !== 'split') return;
    const { along, children } = node;
    const runs = along === 'length' ? 'width' : 'length';
    const [start, fromMm] = along === 'length' ? [xMm, yMm] : [yMm, xMm];
    const run = runs === 'length' ? node.lengthMm : node.widthMm;
    const whole = runs === 'length' ? root.lengthMm : root.widthMm;
    const common = {
      kind: runs === 'length' ? ('rip' as const) : ('crosscut' as const),
      runs: runs as SawCut['runs'],
      strip,
      fromMm,
      toMm: fromMm + run,
      full: whole - run <= LEAST_OFFCUT_MM,
    };
    const end = start + (along === 'length' ? node.lengthMm : node.widthMm);
    const next: (() => void)[] = [];
    let offset = start;
    let nextPiece = piece;
    for (const [index, child] of children.entries()) {
      const settingMm = along === 'length' ? child.lengthMm : child.widthMm;
      const atMm = offset + settingMm;
      const [childX, childY] = along === 'length' ? [offset, yMm] : [xMm, offset];
      const remainder = end - atMm > LEAST_OFFCUT_MM;
      const here = nextPiece;
      if (children.length === 1 && !remainder) next.push(() => cutUp(child, strip, childX, childY, here));
      else {
        const free = freed(child, here);
        const last = cuts.at(-1);
        if (index < children.length - 1 || remainder)
          cuts.push({ ...common, settingMm, atMm, frees: [free] });
        else if (last !== undefined) cuts[cuts.length - 1] = { ...last, frees: [...last.frees, free] };
        if (free.type === 'strip') next.push(() => cutUp(child, free.strip, childX, childY, here));
      }
      nextPiece += partCount(child);
      offset = atMm + kerfMm;
    }
    for (const go of next) go();
  }

  cutUp(root, null, trimX, trimY, 0);
  return cuts.map((cut, index) => ({ number: index + 1, ...cut }));
}

function partCount(node: CutNode): number {
  if (node.type === 'split') return node.children.reduce((sum, child) => sum + partCount(child), 0);
  return node.type === 'part' ? 1 : 0;
}

/** The long edges first, then the ends; none where the stock is used up to its edge. */
function trimCuts(
  { lengthMm, widthMm }: Pick<StockLayout, 'lengthMm' | 'widthMm'>,
  trimX: number,
  trimY: number,
  kerfMm: number,
): Unnumbered[] {
  const edges = (runs: 'length' | 'width', trimMm: number, sizeMm: number, toMm: number): Unnumbered[] =>
    trimMm <= LEAST_OFFCUT_MM
      ? []
      : [trimMm - kerfMm, sizeMm - trimMm].map((atMm) => ({
          kind: 'trim',
          runs,
          strip: null,
          settingMm: trimMm,
          atMm,
          fromMm: 0,
          toMm,
          full: true,
          frees: [],
        }));
  return [...edges('length', trimY, widthMm, lengthMm), ...edges('width', trimX, lengthMm, widthMm)];
}
