import type { CutNode, StockLayout } from '../../plan-output.ts';
import type { BegunPlan } from '../../project-input.ts';
import { type Blank, laidSize } from '../blank.ts';
import { layoutKey } from '../layout-key.ts';
import { matchId } from '../match-blanks.ts';
import { matchNode } from '../match-node.ts';
import type { MaterialJob } from '../material-job.ts';

/** Sizes within this are one, mm: what was stored is compared with what is asked for now. Ours. */
const SAME_MM = 0.001;

export interface BegunSheets {
  /** Sheets that stay as they are, `count` of each. */
  readonly layouts: readonly StockLayout[];
  /** What the part list asks for beyond them, in the order of the blanks. */
  readonly left: readonly Blank[];
  /** The plan as it was begun cuts just what is asked for: its other sheets stay, too. */
  readonly whole: boolean;
}

/**
 * Which sheets of a plan that is being cut can stay as they are.
 *
 * `begun`: the plan as of the last tick. `job`: what is asked for now. `kerfMm`: mm. Result: the sheets begun whose parts are
 * all still asked for, in the same size and grain, from stock of the same size; or the whole plan, where that holds for
 * all its sheets and nothing is missing. Stock on hand may be gone where its sheet was begun. Rule of ours: what has
 * been sawn cannot be laid out anew.
 */
export function begunSheets(begun: BegunPlan, job: MaterialJob, kerfMm: number): BegunSheets {
  const left = new Map<string, number>();
  const blankOf = new Map<string, Blank>();
  for (const blank of job.blanks) {
    left.set(blank.partId, (left.get(blank.partId) ?? 0) + blank.count);
    blankOf.set(blank.partId, blank);
  }
  const onHand = new Map<string, number>();
  const sound = begun.layouts.filter(
    ({ key, layout }) => layoutKey(begun.materialId, layout, kerfMm) === key && isOffered(layout, job),
  );

  /** Takes the parts of so many sheets out of what is left; returns how many sheets there were parts for. */
  const take = (layout: StockLayout, sheets: number): number => {
    const pieces = piecesOf(layout.cut);
    if (!pieces.every(({ id, node }) => isOf(node, blankOf.get(id), kerfMm))) return 0;
    const asked = new Map<string, number>();
    for (const { id } of pieces) asked.set(id, (asked.get(id) ?? 0) + 1);
    let taken = sheets;
    for (const [id, count] of asked) taken = Math.min(taken, Math.floor((left.get(id) ?? 0) / count));
    for (const [id, count] of asked) left.set(id, (left.get(id) ?? 0) - taken * count);
    if (layout.onHandId !== null) onHand.set(layout.onHandId, (onHand.get(layout.onHandId) ?? 0) + taken);
    return taken;
  };

  const layouts: StockLayout[] = [];
  let allBegun = sound.length === begun.layouts.length;
  for (const { begun: sheets, layout } of sound) {
    const wanted = Math.min(sheets, layout.count);
    const count = take(layout, wanted);
    allBegun &&= count === wanted;
    if (count > 0) layouts.push({ ...layout, count });
  }
  const rest = new Map(left);
  const restIsThere =
    allBegun &&
    begun.layouts.every(({ begun: sheets, layout }) => {
      const more = layout.count - Math.min(sheets, layout.count);
      return take(layout, more) === more && (more === 0 || isThere(layout, job, onHand));
    });
  const whole = restIsThere && layouts.length > 0 && [...left.values()].every((count) => count === 0);
  if (whole) return { layouts: begun.layouts.map(({ layout }) => layout), left: [], whole };
  return { layouts, left: leftOf(job.blanks, rest), whole };
}

function leftOf(blanks: readonly Blank[], left: ReadonlyMap<string, number>): Blank[] {
  const open = new Map(left);
  return blanks.flatMap((blank) => {
    const count = Math.min(blank.count, open.get(blank.partId) ?? 0);
    open.set(blank.partId, (open.get(blank.partId) ?? 0) - count);
    return count > 0 ? [{ ...blank, count }] : [];
  });
}

/** A pack must be for sale in the size the sheet has; what was on hand has been taken. */
function isOffered({ packId, lengthMm, widthMm }: StockLayout, { offers }: MaterialJob): boolean {
  if (packId === null) return true;
  const offer = offers.find((one) => one.packId === packId);
  return offer !== undefined && near(offer.lengthMm, lengthMm) && near(offer.widthMm, widthMm);
}

/** Whether stock on hand is enough for all sheets cut from it so far. */
function isThere({ onHandId }: StockLayout, { offers }: MaterialJob, used: ReadonlyMap<string, number>) {
  if (onHandId === null) return true;
  const offer = offers.find((one) => one.onHandId === onHandId);
  return offer !== undefined && offer.limit >= (used.get(onHandId) ?? 0);
}

function piecesOf(node: CutNode): { readonly id: string; readonly node: CutNode }[] {
  if (node.type === 'offcut') return [];
  if (node.type === 'part') return [{ id: node.partId, node }];
  return node.match === undefined ? node.children.flatMap(piecesOf) : [{ id: matchId(node.match), node }];
}

/** Whether a piece of a sheet is what the blank asks for. */
function isOf(node: CutNode, blank: Blank | undefined, kerfMm: number): boolean {
  if (blank === undefined) return false;
  if (blank.match !== undefined) return JSON.stringify(matchNode(blank, kerfMm)) === JSON.stringify(node);
  const { lengthMm, widthMm } = laidSize(blank);
  const plain = near(node.lengthMm, lengthMm) && near(node.widthMm, widthMm);
  return plain || (blank.grain === 'free' && near(node.lengthMm, widthMm) && near(node.widthMm, lengthMm));
}

function near(mm: number, other: number): boolean {
  return Math.abs(mm - other) <= SAME_MM;
}
