import { cutTree } from '../../server/planning/cutting/sheet-2d/cut-tree.ts';
import type { OpenSheet } from '../../server/planning/cutting/sheet-2d/open-sheet.ts';
import type { SheetJob } from '../../server/planning/cutting/sheet-2d/sheet-job.ts';
import type { SliceNode } from '../../server/planning/cutting/sheet-2d/slicing-tree.ts';
import type { BarJob, BarPattern } from '../../server/planning/cutting/stock-1d/bar-job.ts';
import { brokenRules } from '../planning/cutting/check-layout.ts';

/** Every broken rule of a bar plan: stock length kept, demand met exactly. */
export function brokenBars(job: BarJob, patterns: readonly BarPattern[]): string[] {
  const broken: string[] = [];
  const made = job.pieces.map(() => 0);
  for (const { stock, cuts, times } of patterns) {
    let length = 0;
    for (const { piece, count } of cuts) {
      length += count * Number(job.pieces[piece]?.length);
      made[piece] = Number(made[piece]) + count * times;
    }
    if (!(length <= Number(job.stocks[stock]?.length))) broken.push(`${length} on one bar`);
  }
  for (const [piece, { count }] of job.pieces.entries())
    if (made[piece] !== count) broken.push(`piece ${piece}: ${made[piece]} of ${count}`);
  return broken;
}

/** The sheets as saw cuts, walked by the same checker as the product's layouts; no kerf, no trim. */
export function brokenSheets(job: SheetJob, sheets: readonly OpenSheet[]): string[] {
  const layouts = sheets.map((sheet, index) => {
    const stock = job.stocks[sheet.stock] as { length: number; width: number };
    const size = { lengthMm: stock.length, widthMm: stock.width, kerfMm: 0 };
    const cut = cutTree(sheet.root as SliceNode, size, (node) => ({
      type: 'part',
      partId: String(node.piece),
      turned: node.turned,
      lengthMm: node.length,
      widthMm: node.width,
    }));
    return {
      id: String(index),
      packId: 'sheet',
      onHandId: null,
      label: '',
      count: 1,
      lengthMm: stock.length,
      widthMm: stock.width,
      cut,
    };
  });
  const demands = job.pieces.map((piece, index) => ({
    partId: String(index),
    lengthMm: piece.length,
    widthMm: piece.width,
    count: piece.count,
    grain: piece.turnable ? ('free' as const) : ('along' as const),
  }));
  return brokenRules({ layouts }, { kerfMm: 0, trimMm: 0, demands });
}
