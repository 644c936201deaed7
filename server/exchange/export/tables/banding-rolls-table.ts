import type { BandingPlan, Plan, RollPlan } from '../../../planning/plan-output.ts';
import type { ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';
import { nameBook } from '../name-book.ts';

interface Row {
  readonly banding: BandingPlan;
  readonly number: number;
  readonly roll: RollPlan;
  readonly partName: string;
  readonly edges: string;
  readonly pieces: number;
  readonly pieceMm: number;
}

/** What is cut from which roll; the pieces of a roll, its leftover among them, add up to the roll. */
export function bandingRollsTable(input: ProjectInput, plan: Plan): ExportTable {
  const { text, count, length, run } = columnMakers(input.settings);
  const names = nameBook(input);
  const partNames = new Map(input.parts.map(({ id, name }) => [id, name]));
  const rows = plan.banding.flatMap((banding) =>
    banding.rolls.flatMap((roll, index): Row[] => {
      const common = { banding, number: index + 1, roll };
      const strips = roll.strips.map((strip) => ({
        ...common,
        partName: strip.partId === null ? 'spare' : (partNames.get(strip.partId) ?? ''),
        edges: (strip.stripId ?? '').split('+').join(' + '),
        pieces: strip.count,
        pieceMm: strip.lengthMm,
      }));
      return [...strips, { ...common, partName: 'left over', edges: '', pieces: 1, pieceMm: roll.leftMm }];
    }),
  );
  return exportTable<Row>(
    'banding-rolls',
    'Banding rolls',
    [
      text('Banding', 30, ({ banding }) => names.productFull(banding.id)),
      count('Roll', ({ number }) => number),
      text('Sold as', 18, ({ roll }) => roll.label),
      text('From', 10, ({ roll }) => (roll.onHandId === null ? 'to buy' : 'on hand')),
      run('Roll length', ({ roll }) => roll.lengthMm / 1000),
      text('Part', 28, ({ partName }) => partName),
      text('Edges', 22, ({ edges }) => edges),
      count('Pieces', ({ pieces }) => pieces),
      length('Piece length', ({ pieceMm }) => pieceMm),
    ],
    rows,
  );
}
