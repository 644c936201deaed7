import { describe, expect, it } from 'vitest';
import { contentRows } from '../../../client/grid/content-rows.ts';

/** h stands for a heading, r for a row. */
const rows = (pattern: string) =>
  contentRows([...pattern].map((letter, index) => ({ key: String(index), isHeading: letter === 'h' })));
const range = (top: number, bottom: number) => ({ top, bottom, left: 0, right: 0 });

describe('rows without their headings', () => {
  it('are counted on their own', () => {
    const content = rows('hrrhr');
    expect([0, 1, 2].map(content.shownAt)).toEqual([1, 2, 4]);
    expect(content.within(range(0, 4))).toEqual(range(0, 2));
    expect(content.within(range(2, 3))).toEqual(range(1, 1));
    expect(content.shown(range(1, 2))).toEqual(range(2, 4));
  });

  it('are none in a range that holds only a heading', () => {
    expect(rows('rhr').within(range(1, 1))).toBeNull();
  });

  it('go on past the end of the sheet', () => {
    const content = rows('hrr');
    expect([2, 3].map(content.shownAt)).toEqual([3, 4]);
    expect(content.nearest(5, 'before')).toBe(4);
    expect(content.shownAt(4)).toBe(5);
  });

  it('are the rows themselves where there is no heading', () => {
    const content = rows('rrr');
    expect(content.within(range(0, 2))).toEqual(range(0, 2));
    expect([0, 1, 2, 3].map(content.shownAt)).toEqual([0, 1, 2, 3]);
  });

  it('give the row before or after a heading', () => {
    const content = rows('rrhr');
    expect(content.nearest(2, 'before')).toBe(1);
    expect(content.nearest(2, 'after')).toBe(2);
  });
});
