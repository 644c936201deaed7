import type { FoundSheet } from '../../project-input.ts';
import { GRID_PER_MM } from '../constants.ts';
import type { CuttingQuestion } from '../found/cutting-question.ts';
import { LEAST_KEPT_MM } from '../largest-offcut.ts';
import type { JobStock, SheetJob } from '../sheet-2d/sheet-job.ts';
import { OFFCUT_AIMS } from './constants.ts';

const LENGTH_ONLY = ['length'] as const;
const BOTH = ['length', 'width'] as const;

/** A job in which one smaller sheet is offered, a little cheaper, in the place of a whole one. */
export interface OffcutAim {
  readonly job: SheetJob;
  /** The whole stock, and the smaller one in its place. */
  readonly stock: number;
  readonly spare: number;
}

/**
 * Which larger offcuts are worth trying for, boldest first.
 *
 * `question`: see CuttingQuestion. `sheets`: the plan so far. `offcutMm2`: its largest offcut. Result: for each stock it buys, a
 * strip off its length or its width with a multiple of that area, as far as the pieces' area leaves room for it.
 * Rule of ours, no source.
 */
export function offcutAims(
  { job, kerfMm, toLengthOnly }: CuttingQuestion,
  sheets: readonly FoundSheet[],
  offcutMm2: number,
): OffcutAim[] {
  const bought = new Set(sheets.map(({ stock }) => stock).filter((stock) => canSave(job.stocks[stock])));
  let slack = 0;
  for (const { stock, count } of sheets) slack += count * area(job.stocks[stock] as JobStock);
  for (const piece of job.pieces) slack -= piece.count * area(piece);
  const aims = new Map<string, OffcutAim>();
  for (const factor of OFFCUT_AIMS)
    for (const stock of bought) {
      const whole = job.stocks[stock] as JobStock;
      for (const side of toLengthOnly ? LENGTH_ONLY : BOTH) {
        const across = whole[side === 'length' ? 'width' : 'length'];
        const wantedMm = Math.max(LEAST_KEPT_MM, (factor * offcutMm2 * GRID_PER_MM) / across);
        const cutOff = Math.ceil((wantedMm + kerfMm) * GRID_PER_MM);
        const key = `${stock} ${side} ${cutOff}`;
        if (cutOff >= whole[side] || cutOff * across > slack || aims.has(key)) continue;
        const smaller = { ...whole, [side]: whole[side] - cutOff, cost: whole.cost - 0.5, limit: 1 };
        aims.set(key, {
          job: { ...job, stocks: [...job.stocks, smaller] },
          stock,
          spare: job.stocks.length,
        });
      }
    }
  return [...aims.values()];
}

function canSave(stock: JobStock | undefined): boolean {
  return stock !== undefined && stock.cost >= 1;
}

function area({ length, width }: { readonly length: number; readonly width: number }): number {
  return length * width;
}
