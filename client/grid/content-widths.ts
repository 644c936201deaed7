import type { CellView, SheetColumn, SheetRow } from './grid-column.ts';

/** What a cell has beside its text, px: padding and border on both sides, and a little air. */
const AROUND_PX = 24;
const SWATCH_PX = 16;
/** Rows looked at; the rest of a very long list is taken to be like them. */
const ROWS_LOOKED_AT = 300;

/** How wide the columns that ask for it have to be for what the rows show in them, px, by column id. */
export function contentWidths<Row extends SheetRow>(
  columns: readonly SheetColumn<Row>[],
  rows: readonly Row[],
): ReadonlyMap<string, number> {
  const measure = textMeasure();
  const looked = rows.filter((row) => row.isHeading !== true).slice(0, ROWS_LOOKED_AT);
  return new Map(
    columns.flatMap(({ id, fit, view }) => {
      if (fit === undefined) return [];
      const widest = Math.max(0, ...looked.map((row) => width(view(row), measure)));
      return [[id, Math.ceil(Math.min(fit.max, Math.max(fit.min, widest)))] as const];
    }),
  );
}

function width({ text, tone, swatch }: CellView, measure: (text: string) => number): number {
  if (tone === 'absent' || tone === 'quiet') return 0;
  return measure(text) + AROUND_PX + (swatch === undefined ? 0 : SWATCH_PX);
}

function textMeasure(): (text: string) => number {
  const context = document.createElement('canvas').getContext('2d');
  if (context === null) return () => 0;
  const { fontSize, fontFamily } = getComputedStyle(document.body);
  context.font = `${fontSize} ${fontFamily}`;
  return (text) => context.measureText(text).width;
}
