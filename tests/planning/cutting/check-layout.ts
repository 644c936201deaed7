import type { CutNode, MaterialPlan } from '../../../server/planning/plan-output.ts';

/** What a plan must satisfy, stated apart from the planner: every layout is walked saw cut by saw cut. */
export interface CutRules {
  readonly kerfMm: number;
  /** Trim of every side of a full sheet; pieces on hand are not trimmed. */
  readonly trimMm: number;
  readonly demands: readonly Demand[];
  /** How many of each piece on hand there are. */
  readonly onHand?: ReadonlyMap<string, number>;
}

export interface Demand {
  readonly partId: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly count: number;
  readonly grain: 'along' | 'across' | 'free';
}

/** Sizes agree within this: a hundredth of a millimetre. */
const SAME_MM = 0.01;

interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** Every broken rule in words; an empty list when the plan can be cut. */
export function brokenRules(plan: Pick<MaterialPlan, 'layouts'>, rules: CutRules): string[] {
  const broken: string[] = [];
  const made = new Map<string, number>();
  const demandOf = new Map(rules.demands.map((demand) => [demand.partId, demand]));
  const taken = new Map<string, number>();
  const ids = new Set<string>();
  for (const layout of plan.layouts) {
    const where = `layout ${layout.id}`;
    if (ids.has(layout.id)) broken.push(`${where}: the id is used twice`);
    ids.add(layout.id);
    if (!(Number.isInteger(layout.count) && layout.count > 0)) broken.push(`${where}: count ${layout.count}`);
    if ((layout.packId === null) === (layout.onHandId === null))
      broken.push(`${where}: must be either bought or on hand`);
    if (layout.onHandId !== null)
      taken.set(layout.onHandId, (taken.get(layout.onHandId) ?? 0) + layout.count);
    const trim = layout.onHandId === null ? rules.trimMm : 0;
    const usable = { lengthMm: layout.lengthMm - 2 * trim, widthMm: layout.widthMm - 2 * trim };
    if (!same(layout.cut.lengthMm, usable.lengthMm) || !same(layout.cut.widthMm, usable.widthMm))
      broken.push(`${where}: the first cut does not start from the trimmed stock`);
    const pieces: Rectangle[] = [];
    walk(
      layout.cut,
      0,
      0,
      (node, x, y) => {
        if (node.type === 'split')
          broken.push(...brokenSplit(node, rules.kerfMm).map((text) => `${where}: ${text}`));
        if (node.type !== 'split') pieces.push({ x, y, lengthMm: node.lengthMm, widthMm: node.widthMm });
        if (node.type !== 'part') return;
        made.set(node.partId, (made.get(node.partId) ?? 0) + layout.count);
        broken.push(...brokenPart(node, demandOf.get(node.partId)).map((text) => `${where}: ${text}`));
      },
      rules.kerfMm,
    );
    for (const piece of pieces) {
      const inside =
        piece.x >= -SAME_MM &&
        piece.y >= -SAME_MM &&
        piece.x + piece.lengthMm <= usable.lengthMm + SAME_MM &&
        piece.y + piece.widthMm <= usable.widthMm + SAME_MM;
      if (!inside) broken.push(`${where}: a piece lies outside the stock`);
    }
    for (const [index, first] of pieces.entries())
      for (const second of pieces.slice(index + 1))
        if (closerThan(first, second, rules.kerfMm))
          broken.push(`${where}: two pieces overlap or lack a kerf`);
  }
  for (const demand of rules.demands) {
    const count = made.get(demand.partId) ?? 0;
    if (count !== demand.count) broken.push(`part ${demand.partId}: ${count} cut, ${demand.count} wanted`);
  }
  for (const [id, count] of taken)
    if (count > (rules.onHand?.get(id) ?? 0)) broken.push(`on hand ${id}: ${count} used`);
  return broken;
}

/** Calls `visit` for every node with its corner; children lie side by side with one kerf between. */
function walk(
  node: CutNode,
  x: number,
  y: number,
  visit: (node: CutNode, x: number, y: number) => void,
  kerfMm: number,
): void {
  visit(node, x, y);
  if (node.type !== 'split') return;
  let at = node.along === 'length' ? x : y;
  for (const child of node.children) {
    if (node.along === 'length') walk(child, at, y, visit, kerfMm);
    else walk(child, x, at, visit, kerfMm);
    at += (node.along === 'length' ? child.lengthMm : child.widthMm) + kerfMm;
  }
}

function brokenSplit(node: Extract<CutNode, { type: 'split' }>, kerfMm: number): string[] {
  const broken: string[] = [];
  if (node.children.length === 0) broken.push('a split has no child');
  let filled = kerfMm * (node.children.length - 1);
  for (const child of node.children) {
    const along = node.along === 'length' ? child.lengthMm : child.widthMm;
    const across = node.along === 'length' ? child.widthMm : child.lengthMm;
    if (!(along > 0)) broken.push(`a piece has size ${along}`);
    if (!same(across, node.along === 'length' ? node.widthMm : node.lengthMm))
      broken.push('a cut does not go right across');
    filled += along;
  }
  const total = node.along === 'length' ? node.lengthMm : node.widthMm;
  // A remainder no wider than one more kerf is turned to dust by the last cut.
  if (filled > total + SAME_MM || filled < total - kerfMm - 0.05 - SAME_MM)
    broken.push(`children take ${filled} of ${total}`);
  return broken;
}

function brokenPart(node: Extract<CutNode, { type: 'part' }>, demand: Demand | undefined): string[] {
  if (demand === undefined) return [`part ${node.partId} was not asked for`];
  const length = node.turned ? node.widthMm : node.lengthMm;
  const width = node.turned ? node.lengthMm : node.widthMm;
  const broken: string[] = [];
  if (!same(length, demand.lengthMm) || !same(width, demand.widthMm))
    broken.push(`part ${node.partId} is cut ${length} x ${width}`);
  if (demand.grain === 'along' && node.turned) broken.push(`part ${node.partId} is turned`);
  if (demand.grain === 'across' && !node.turned) broken.push(`part ${node.partId} is not turned`);
  return broken;
}

function closerThan(first: Rectangle, second: Rectangle, kerfMm: number): boolean {
  const apartX = Math.max(second.x - first.x - first.lengthMm, first.x - second.x - second.lengthMm);
  const apartY = Math.max(second.y - first.y - first.widthMm, first.y - second.y - second.widthMm);
  return Math.max(apartX, apartY) < kerfMm - SAME_MM;
}

function same(left: number, right: number): boolean {
  return Math.abs(left - right) <= SAME_MM;
}
