import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keepOrder } from '../../../../client/screens/parts/view/keep-order.ts';
import { readGroupings } from '../../../../client/screens/parts/view/remembered-groups.ts';

/** What the server makes of the moves: each row named goes to the end. */
function moved(stored: readonly string[], wanted: readonly string[]): string[] {
  const rows = [...stored];
  for (const change of keepOrder(stored, wanted)) {
    if (change.op !== 'move' || change.before !== null) throw new Error('not a move to the end');
    rows.push(...rows.splice(rows.indexOf(change.id), 1));
  }
  return rows;
}

describe('keeping the order shown', () => {
  it('moves only what stands behind the part that is right already', () => {
    expect(keepOrder(['1', '2', '3'], ['1', '2', '3'])).toEqual([]);
    expect(keepOrder(['1', '2', '3'], ['1', '3', '2'])).toEqual([
      { op: 'move', table: 'parts', id: '2', before: null },
    ]);
    expect(keepOrder(['1', '2', '3'], ['3', '1', '2']).map((change) => 'id' in change && change.id)).toEqual([
      '1',
      '2',
    ]);
  });

  it('brings any list into any order', () => {
    const ids = fc.uniqueArray(fc.nat(60).map(String), { maxLength: 25 });
    fc.assert(
      fc.property(
        ids.chain((stored) =>
          fc.tuple(
            fc.constant(stored),
            fc.shuffledSubarray(stored, { minLength: stored.length, maxLength: stored.length }),
          ),
        ),
        ([stored, wanted]) => {
          expect(moved(stored, wanted)).toEqual(wanted);
        },
      ),
    );
  });
});

describe('remembered groups', () => {
  it('are read as far as they make sense', () => {
    const text = JSON.stringify({
      version: 1,
      projects: [
        ['7', { groupBy: 'section', closed: ['Door', 4] }],
        ['8', { groupBy: 'colour', closed: [] }],
        ['9', null],
        'junk',
        ['10', { groupBy: 'materialId' }],
      ],
    });
    expect([...readGroupings(text)]).toEqual([
      ['7', { groupBy: 'section', closed: ['Door'] }],
      ['10', { groupBy: 'materialId', closed: [] }],
    ]);
  });

  it('are none when nothing sound is stored', () => {
    for (const junk of [null, '', '{', '3', '{"version":2,"projects":[]}', '{"version":1,"projects":{}}'])
      expect(readGroupings(junk).size).toBe(0);
  });
});
