import { describe, expect, it } from 'vitest';
import { openLayouts } from '../../../../server/planning/cutting/begun/open-layouts.ts';
import type { StockLayout } from '../../../../server/planning/plan-output.ts';

const layout = (packId: string | null, count: number, lengthMm: number): StockLayout => ({
  id: '1',
  packId,
  onHandId: packId === null ? '7' : null,
  label: '',
  count,
  lengthMm: 2000,
  widthMm: 1000,
  cut: { type: 'part', partId: '1', turned: false, lengthMm, widthMm: 500 },
});

describe('the layouts beside the sheets being cut', () => {
  it('are the others, equal sheets counted', () => {
    const layouts = [layout('a', 3, 900), layout('a', 1, 800), layout(null, 1, 900), layout('b', 2, 900)];
    const begun = [layout('a', 2, 900), layout(null, 1, 900)];
    expect(openLayouts(layouts, begun)).toEqual([
      layout('a', 1, 900),
      layout('a', 1, 800),
      layout('b', 2, 900),
    ]);
    expect(openLayouts(layouts, [])).toEqual(layouts);
    expect(openLayouts(layouts, layouts)).toEqual([]);
  });
});
