import { describe, expect, it } from 'vitest';
import { figureTitle } from '../../../client/panels/figure-title.ts';
import { figureWords } from '../../../client/panels/figure-words.ts';
import type { ProjectState } from '../../../server/http/contract.ts';

const project = {
  rows: {
    parts: [
      { id: '12', name: 'Shelf' },
      { id: '13', name: '' },
    ],
  },
  plan: {
    sizes: [{ id: '1', name: 'shelf_width' }],
    materials: [{ id: 'birch-ply-18', name: 'Birch plywood 18 mm' }],
    banding: [{ id: 'tape', name: 'Birch tape' }],
    needs: [{ id: 'rag', name: 'Rag' }],
    recipes: [{ id: '3', name: 'Clear satin', coats: [{ id: '7-2', name: 'Oil poly', number: 2 }] }],
    buy: { lines: [{ id: 'shellac', name: 'Shellac' }] },
  },
} as unknown as ProjectState;

const title = (at: string): string => {
  const { name, subject } = figureTitle(project, at);
  return `${name} | ${subject}`;
};

describe('what a figure’s path is called', () => {
  it('names the figure and whose it is', () => {
    expect(title('parts/12/cutLengthMm')).toBe('Cut length | Shelf');
    expect(title('parts/12/strips/left+front/stripMm')).toBe('Strip to cut | Shelf, strip left + front');
    expect(title('parts/12/edges/back/outlineMm')).toBe('Edge length | Shelf, back edge');
    expect(title('recipes/3/coats/7-2/litres')).toBe('Liquid | Clear satin, Oil poly, 2');
    expect(title('buy/lines/shellac/cost')).toBe('Cost | Shellac');
    expect(title('buy/totalMinor')).toBe('Total | Whole project');
    expect(title('materials/birch-ply-18/stocks')).toBe('To buy | Birch plywood 18 mm');
    expect(title('sizes/1/valueMm')).toBe('Size | shelf_width');
    expect(title('totals/litres')).toBe('Liquid | Whole project');
  });

  it('keeps the id of what has no name or is gone', () => {
    expect(title('parts/13/cutLengthMm')).toBe('Cut length | no. 13');
    expect(title('parts/99/cutLengthMm')).toBe('Cut length | no. 99');
  });

  it('reads a field nobody named as words', () => {
    expect(figureWords('someOtherField')).toBe('Some other field');
  });
});
