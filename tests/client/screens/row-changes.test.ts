import { describe, expect, it } from 'vitest';
import {
  carriedOn,
  deleteParts,
  duplicateParts,
  insertPart,
  moveParts,
} from '../../../client/screens/parts/row-changes.ts';
import type { PartRow } from '../../../server/http/contract.ts';

const part = (id: string): PartRow => ({
  id,
  position: Number(id),
  name: `part ${id}`,
  section: 'left',
  quantity: '2',
  length: '600 mm',
  width: '300 mm',
  shape: 'rectangle',
  materialId: 'birch-ply-18',
  grain: 'along',
  edgeFront: 'bare',
  edgeBack: 'hidden',
  edgeLeft: 'hidden',
  edgeRight: 'hidden',
  radiusFrontLeft: '',
  radiusFrontRight: '',
  radiusBackLeft: '',
  radiusBackRight: '',
  showRecipeId: '1',
  backRecipeId: '',
  note: 'mind the knot',
  grainMatch: '',
});
const parts = ['1', '2', '3', '4', '5'].map(part);
const one = (list: readonly PartRow[], id: string) => list.find((row) => row.id === id);
const block = (...ids: string[]): PartRow[] => parts.filter(({ id }) => ids.includes(id));

describe('whole-row commands', () => {
  it('insert a part that carries on section, material and finishes, and nothing else', () => {
    expect(insertPart('new-1', part('2'), '3')).toEqual([
      {
        op: 'insert',
        table: 'parts',
        tempId: 'new-1',
        before: '3',
        values: {
          quantity: '1',
          section: 'left',
          materialId: 'birch-ply-18',
          showRecipeId: '1',
          backRecipeId: '',
        },
      },
    ]);
    expect(carriedOn(null)).toEqual({ quantity: '1' });
  });

  it('duplicate every value but the id and the place', () => {
    const [copy] = duplicateParts(block('2'), part('3'), ['new-1']);
    const { id: _id, position: _position, ...values } = part('2');
    expect(copy).toEqual({ op: 'insert', table: 'parts', tempId: 'new-1', before: '3', values });
    expect(duplicateParts(block('5'), null, ['new-1'])[0]).toMatchObject({ before: null });
  });

  it('move a block by moving the row it passes to its other side', () => {
    expect(moveParts(parts, block('2', '3'), one(parts, '1'), 'up')).toEqual([
      { op: 'move', table: 'parts', id: '1', before: '4' },
    ]);
    expect(moveParts(parts, block('2', '3'), one(parts, '4'), 'down')).toEqual([
      { op: 'move', table: 'parts', id: '4', before: '2' },
    ]);
    expect(moveParts(parts, block('4', '5'), one(parts, '3'), 'up')).toEqual([
      { op: 'move', table: 'parts', id: '3', before: null },
    ]);
  });

  it('move a block past the row shown beside it, where others of the list are hidden in between', () => {
    // Shown are 1, 3 and 5 only: 3 and 5 go above 1, which comes to stand behind 5.
    expect(moveParts(parts, block('3', '5'), one(parts, '1'), 'up')).toEqual([
      { op: 'move', table: 'parts', id: '1', before: null },
    ]);
    // 1 and 3 go below 5, which comes to stand in front of 1.
    expect(moveParts(parts, block('1', '3'), one(parts, '5'), 'down')).toEqual([
      { op: 'move', table: 'parts', id: '5', before: '1' },
    ]);
  });

  it('move nothing past the ends of the list', () => {
    expect(moveParts(parts, block('1', '2'), undefined, 'up')).toEqual([]);
    expect(moveParts(parts, [], one(parts, '1'), 'down')).toEqual([]);
  });

  it('delete each row of the block', () => {
    expect(deleteParts(block('2', '4'))).toEqual([
      { op: 'delete', table: 'parts', id: '2' },
      { op: 'delete', table: 'parts', id: '4' },
    ]);
  });
});
