import { copiesOf, type Fill } from './fill.ts';
import type { CellAt, Rectangle } from './range-model.ts';
import { seriesOf } from './series.ts';

/** What a fill needs to know of a cell. */
export interface FilledCell {
  /** What it holds, as a copy takes it. */
  readonly held: string;
  /** What its editor would start with, as a series goes on from it. */
  readonly typed: string;
  /** Whether its column takes free text, which can count; one of a list cannot. */
  readonly counts: boolean;
}

export interface FillHow {
  /** A single text with a number in it counts on by ones (Alt held). */
  readonly alone: boolean;
  /** The source is as long as what is filled in already: Ctrl+D on a range of which only the beginning is filled in. */
  readonly grows: boolean;
}

/**
 * The texts a fill writes. Along each line, the source goes on as a series when its cells show a step; otherwise it
 * is repeated. Cells a series has no text for, and sources that are not there, leave their target as it is.
 */
export function fillTexts(
  fill: Fill,
  read: (cell: CellAt) => FilledCell | null,
  how: FillHow,
): { readonly to: CellAt; readonly text: string }[] {
  const texts: { to: CellAt; text: string }[] = [];
  for (const line of linesOf(fill)) {
    const { first, source, target } = how.grows ? grown(line, read) : line;
    const cells = source.map(read);
    const counts = cells.every((cell) => cell?.counts === true);
    const series = counts
      ? seriesOf(
          cells.map((cell) => cell?.typed ?? ''),
          how.alone,
        )
      : null;
    if (series !== null)
      for (const to of target) {
        const text = series(placeOf(to, fill) - first);
        if (text !== null) texts.push({ to, text });
      }
    else
      for (const { from, to } of copiesOf(line.whole)) {
        const cell = read(from);
        if (cell !== null) texts.push({ to, text: cell.held });
      }
  }
  return texts;
}

interface Line {
  /** The line's part of the fill, for plain copies. */
  readonly whole: Fill;
  /** Where along the line the source begins. */
  readonly first: number;
  readonly source: readonly CellAt[];
  readonly target: readonly CellAt[];
}

function linesOf(fill: Fill): Line[] {
  const { source, target, along } = fill;
  const [from, to] = along === 'down' ? [target.left, target.right] : [target.top, target.bottom];
  return Array.from({ length: to - from + 1 }, (_, index) => {
    const cut = (area: Rectangle): Rectangle =>
      along === 'down'
        ? { ...area, left: from + index, right: from + index }
        : { ...area, top: from + index, bottom: from + index };
    const whole = { source: cut(source), target: cut(target), along };
    return {
      whole,
      first: along === 'down' ? source.top : source.left,
      source: cellsOf(whole.source),
      target: cellsOf(whole.target),
    };
  });
}

/** The line with the filled-in cells that follow the source taken into it, when only empty ones come after them. */
function grown(line: Line, read: (cell: CellAt) => FilledCell | null): Line {
  const filled = line.target.findIndex((cell) => (read(cell)?.typed ?? '') === '');
  const rest = filled < 0 ? [] : line.target.slice(filled);
  if (filled < 1 || rest.some((cell) => (read(cell)?.typed ?? '') !== '')) return line;
  const source = [...line.source, ...line.target.slice(0, filled)];
  const texts = source.map((cell) => read(cell)?.typed ?? '');
  return seriesOf(texts, false) === null ? line : { ...line, source, target: rest };
}

function cellsOf({ top, left, bottom, right }: Rectangle): CellAt[] {
  const cells: CellAt[] = [];
  for (let row = top; row <= bottom; row += 1)
    for (let column = left; column <= right; column += 1) cells.push({ row, column });
  return cells;
}

function placeOf(cell: CellAt, { along }: Fill): number {
  return along === 'down' ? cell.row : cell.column;
}
