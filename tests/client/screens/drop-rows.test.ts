import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dropParts } from '../../../client/screens/parts/drop-rows.ts';
import type { PartRow } from '../../../server/http/contract.ts';

/** Only the id and the place in the list count here. */
const parts = ['1', '2', '3', '4', '5'].map((id) => ({ id }) as PartRow);
const block = (...ids: string[]): PartRow[] => parts.filter(({ id }) => ids.includes(id));
const move = (id: string, before: string | null) => ({ op: 'move', table: 'parts', id, before });

/** The ids in the order that the changes lead to: each move takes a row out and puts it in front of another. */
function led(changes: ReturnType<typeof dropParts>): string[] {
  const ids = parts.map(({ id }) => id);
  for (const change of changes) {
    if (change.op !== 'move') throw new Error(change.op);
    ids.splice(ids.indexOf(change.id), 1);
    ids.splice(change.before === null ? ids.length : ids.indexOf(change.before), 0, change.id);
  }
  return ids;
}

describe('parts let go in a gap', () => {
  it('follow the part above it', () => {
    expect(dropParts(parts, block('1', '2'), { above: '4', below: '5' })).toEqual([
      move('1', '5'),
      move('2', '5'),
    ]);
  });

  it('go to the very end below the last part, and to the front above the first', () => {
    expect(dropParts(parts, block('2'), { above: '5', below: null })).toEqual([move('2', null)]);
    expect(dropParts(parts, block('4'), { above: null, below: '1' })).toEqual([move('4', '1')]);
  });

  it('do not move into the gap they stand in', () => {
    expect(dropParts(parts, block('2', '3'), { above: '1', below: '4' })).toEqual([]);
  });

  it('stand together between their new neighbours, in their order, with the others in theirs', () => {
    fc.assert(
      fc.property(
        fc.subarray(['1', '2', '3', '4', '5'], { minLength: 1, maxLength: 4 }),
        fc.nat(4),
        (ids, at) => {
          const rest = parts.map(({ id }) => id).filter((id) => !ids.includes(id));
          const gap = Math.min(at, rest.length);
          const changes = dropParts(parts, block(...ids), {
            above: rest[gap - 1] ?? null,
            below: rest[gap] ?? null,
          });
          expect(led(changes)).toEqual([
            ...rest.slice(0, gap),
            ...block(...ids).map(({ id }) => id),
            ...rest.slice(gap),
          ]);
        },
      ),
    );
  });
});
