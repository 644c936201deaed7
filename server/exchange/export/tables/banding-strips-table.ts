import type { Plan, RollStrip } from '../../../planning/plan-output.ts';
import type { ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';
import { nameBook } from '../name-book.ts';

interface Row {
  readonly bandingId: string;
  readonly partName: string;
  readonly section: string;
  readonly edges: string;
  readonly strips: number | null;
  readonly runMm: number | null;
  readonly stripMm: number | null;
}

/** Every strip of banding to cut, with the spare ones, by banding, in the order of the part list. */
export function bandingStripsTable(input: ProjectInput, plan: Plan): ExportTable {
  const { text, count, length, run } = columnMakers(input.settings);
  const names = nameBook(input);
  const rows = [...partStrips(input, plan), ...spareStrips(plan)];
  const bandings = [...new Set(rows.map(({ bandingId }) => bandingId))];
  return exportTable<Row>(
    'banding-strips',
    'Banding strips',
    [
      text('Banding', 30, (row) => names.productFull(row.bandingId)),
      text('Part', 28, (row) => row.partName),
      text('Section', 18, (row) => row.section),
      text('Edges', 22, (row) => row.edges),
      count('Strips', (row) => row.strips),
      length('Edge run', (row) => row.runMm),
      length('Strip length', (row) => row.stripMm),
      run('All strips', ({ strips, stripMm }) =>
        strips === null || stripMm === null ? null : (strips * stripMm) / 1000,
      ),
    ],
    bandings.flatMap((id) => rows.filter(({ bandingId }) => bandingId === id)),
  );
}

function partStrips(input: ProjectInput, plan: Plan): Row[] {
  const parts = new Map(input.parts.map((part) => [part.id, part]));
  return plan.parts.flatMap((part) =>
    part.strips.map((strip) => ({
      bandingId: strip.bandingId,
      partName: parts.get(part.id)?.name ?? '',
      section: parts.get(part.id)?.section ?? '',
      edges: strip.edges.join(' + '),
      strips: part.quantity.value,
      runMm: strip.runMm.value,
      stripMm: strip.stripMm.value,
    })),
  );
}

/** Spares are known by length from the rolls they are cut from. */
function spareStrips(plan: Plan): Row[] {
  return plan.banding.flatMap(({ id, rolls }) => {
    const counts = new Map<number, number>();
    for (const { lengthMm, count } of rolls.flatMap(({ strips }) => strips).filter(isSpare))
      counts.set(lengthMm, (counts.get(lengthMm) ?? 0) + count);
    return [...counts].map(([stripMm, strips]) => ({
      bandingId: id,
      partName: 'spare',
      section: '',
      edges: '',
      strips,
      runMm: null,
      stripMm,
    }));
  });
}

function isSpare({ partId }: RollStrip): boolean {
  return partId === null;
}
