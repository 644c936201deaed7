import type { SheetRow } from './grid-column.ts';
import type { Rectangle } from './range-model.ts';

/**
 * The rows that hold content, counted without the headings between them. Pastes, fills and copies go by this count,
 * so that a heading in the middle of a range swallows no line.
 */
export interface ContentRows {
  /** Where the content row stands in the sheet; rows past the last one follow the sheet's end. */
  shownAt(content: number): number;
  /** The rows of a range without its headings; null when it has nothing else. */
  within(range: Rectangle): Rectangle | null;
  /** The range as the sheet shows it. */
  shown(range: Rectangle): Rectangle;
  /** The content row at or, when a heading stands there, before it (after it for `after`). */
  nearest(shown: number, side: 'before' | 'after'): number;
}

export function contentRows(rows: readonly SheetRow[]): ContentRows {
  /** Sheet rows of the content, in order. */
  const places: number[] = [];
  /** For each sheet row, how many content rows stand before it. */
  const before: number[] = [];
  rows.forEach((row, index) => {
    before.push(places.length);
    if (row.isHeading !== true) places.push(index);
  });

  const shownAt = (content: number): number =>
    places[content] ?? rows.length + Math.max(0, content - places.length);
  const nearest = (shown: number, side: 'before' | 'after'): number => {
    const count = before[shown];
    if (count === undefined) return places.length + shown - rows.length;
    return rows[shown]?.isHeading === true && side === 'before' ? count - 1 : count;
  };
  return {
    shownAt,
    nearest,
    within(range) {
      const top = nearest(range.top, 'after');
      const bottom = nearest(range.bottom, 'before');
      return bottom < top ? null : { ...range, top, bottom };
    },
    shown: (range) => ({ ...range, top: shownAt(range.top), bottom: shownAt(range.bottom) }),
  };
}
