import type { BuyLine, BuyPack, Plan } from '../../../planning/plan-output.ts';
import type { ProjectInput } from '../../../planning/project-input.ts';
import { columnMakers } from '../column-makers.ts';
import { type ExportTable, exportTable } from '../export-table.ts';

interface Row {
  readonly line: BuyLine;
  /** Null on a line of which nothing is bought, or whose packs are not known. */
  readonly pack: BuyPack | null;
  /** True on the first pack of a line: what belongs to the whole line is written there. */
  readonly first: boolean;
}

/** What to order, one line per pack, by supplier. What a whole line needs stands on its first pack only. */
export function buyListTable(input: ProjectInput, plan: Plan): ExportTable {
  const { text, count, money, amount, unit } = columnMakers(input.settings);
  const unitOf = ({ line }: Row) => line.unit;
  const onFirst =
    (value: (line: BuyLine) => number | null) =>
    ({ line, first }: Row): number | null =>
      first ? value(line) : null;
  const suppliers = [...new Set(plan.buy.lines.map(({ supplierName }) => supplierName))].toSorted(
    (one, other) => Number(one === '') - Number(other === '') || one.localeCompare(other, 'en'),
  );
  return exportTable<Row>(
    'buy-list',
    'Buy list',
    [
      text('Supplier', 24, ({ line }) => line.supplierName),
      text('Item', 36, ({ line }) => line.name),
      text('Category', 14, ({ line }) => line.category),
      text('Pack', 18, ({ pack }) => pack?.label ?? null),
      count('Packs', ({ line, pack }) => pack?.count ?? (line.toBuy.value === 0 ? 0 : null)),
      money('Price of one', ({ pack }) => pack?.priceMinor),
      money('Cost', ({ line, pack }) => (pack === null ? line.cost.value : pack.lineMinor)),
      amount(
        'Needed',
        unitOf,
        onFirst(({ need }) => need.value),
      ),
      amount(
        'On hand',
        unitOf,
        onFirst(({ onHand }) => onHand.value),
      ),
      amount(
        'To buy',
        unitOf,
        onFirst(({ toBuy }) => toBuy.value),
      ),
      amount(
        'Left over',
        unitOf,
        onFirst(({ leftover }) => leftover.value),
      ),
      unit('Unit', unitOf),
      text('Notes', 50, ({ line, first }) => (first ? line.notes.join(' ') : null)),
    ],
    suppliers.flatMap((supplier) =>
      plan.buy.lines.filter(({ supplierName }) => supplierName === supplier).flatMap(rowsOf),
    ),
  );
}

function rowsOf(line: BuyLine): Row[] {
  if (line.packs.length === 0) return [{ line, pack: null, first: true }];
  return line.packs.map((pack, index) => ({ line, pack, first: index === 0 }));
}
