import { describe, expect, it } from 'vitest';
import type { PartBook } from '../../../client/screens/parts/part-book.ts';
import { partWrites } from '../../../client/screens/parts/part-writes.ts';

const book = {
  materialChoices: [
    { value: '', text: 'no material' },
    { value: 'birch-ply-18', text: 'birch 18', detail: 'Birch plywood 18 mm' },
  ],
  edgeChoices: [
    { value: 'hidden', text: 'hidden' },
    { value: 'bare', text: 'bare' },
    { value: 'oak-3', text: 'oak 3' },
  ],
  recipeChoices: [
    { value: '', text: 'no finish' },
    { value: '7', text: 'Clear satin' },
  ],
} as unknown as PartBook;

const write = (columnId: string, text: string): unknown =>
  partWrites([{ key: '1', columnId, text }], book).writes[0]?.values;

describe('what cell texts mean for a part', () => {
  it('gathers the cells of one row into one write and keeps the order of rows', () => {
    const { writes } = partWrites(
      [
        { key: '2', columnId: 'length', text: ' 600 ' },
        { key: '1', columnId: 'name', text: 'Side' },
        { key: '2', columnId: 'width', text: '23 5/8"' },
      ],
      book,
    );
    expect(writes).toEqual([
      { key: '2', values: { length: '600', width: '23 5/8"' } },
      { key: '1', values: { name: 'Side' } },
    ]);
  });

  it('turns names of products and finishes into their ids', () => {
    expect(write('materialId', 'Birch 18')).toEqual({ materialId: 'birch-ply-18' });
    expect(write('edgeFront', 'OAK 3')).toEqual({ edgeFront: 'oak-3' });
    expect(write('showRecipeId', 'clear satin')).toEqual({ showRecipeId: '7' });
  });

  it('keeps a name nobody knows, so that the plan can mark it', () => {
    expect(write('materialId', 'ebony 40')).toEqual({ materialId: 'ebony 40' });
    expect(write('edgeBack', 'ebony')).toEqual({ edgeBack: 'ebony' });
  });

  it('reads empty cells and dashes on an edge as hidden', () => {
    for (const text of ['', '-', '–', 'none', 'x'])
      expect(write('edgeLeft', text)).toEqual({ edgeLeft: 'hidden' });
  });

  it('empties a material or finish that is cleared', () => {
    expect(write('materialId', '')).toEqual({ materialId: '' });
    expect(write('backRecipeId', 'no finish')).toEqual({ backRecipeId: '' });
  });

  it('refuses a word that is no grain direction or shape, and writes the rest', () => {
    const { writes, refused } = partWrites(
      [
        { key: '1', columnId: 'grain', text: 'diagonal' },
        { key: '1', columnId: 'shape', text: 'Round' },
      ],
      book,
    );
    expect(writes).toEqual([{ key: '1', values: { shape: 'round' } }]);
    expect(refused).toEqual([
      '“diagonal” is not a grain direction; the choices are “along”, “across”, “free”.',
    ]);
  });
});
