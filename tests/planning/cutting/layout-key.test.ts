import { describe, expect, it } from 'vitest';
import { layoutKey } from '../../../server/planning/cutting/layout-key.ts';
import type { StockLayout } from '../../../server/planning/plan-output.ts';

const layout: StockLayout = {
  id: '1',
  packId: 'full',
  onHandId: null,
  label: 'full sheet',
  count: 2,
  lengthMm: 1000,
  widthMm: 500,
  cut: { type: 'part', partId: '7', turned: false, lengthMm: 1000, widthMm: 500 },
};
const key = layoutKey('ply', layout, 3);

describe('the key of a layout', () => {
  it('stays when only its number, count or label is another', () => {
    expect(layoutKey('ply', { ...layout, id: '4', count: 9, label: 'sheet' } as StockLayout, 3)).toBe(key);
    expect(key).toMatch(/^[0-9a-f]{16}$/);
  });

  it.each([
    ['material', layoutKey('birch', layout, 3)],
    ['kerf', layoutKey('ply', layout, 3.2)],
    ['stock', layoutKey('ply', { ...layout, packId: null, onHandId: '2' }, 3)],
    ['size of the stock', layoutKey('ply', { ...layout, lengthMm: 1001 }, 3)],
    [
      'part',
      layoutKey(
        'ply',
        { ...layout, cut: { type: 'part', partId: '8', turned: false, lengthMm: 1000, widthMm: 500 } },
        3,
      ),
    ],
    [
      'way a part lies',
      layoutKey(
        'ply',
        { ...layout, cut: { type: 'part', partId: '7', turned: true, lengthMm: 1000, widthMm: 500 } },
        3,
      ),
    ],
  ])('is another for another %s', (_what, other) => {
    expect(other).not.toBe(key);
  });
});
