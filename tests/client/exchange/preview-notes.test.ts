import { describe, expect, it } from 'vitest';
import { hasNoSize, isMarked, rowNotes, sharedNotes } from '../../../client/exchange/preview-notes.ts';
import type { PreviewCell, PreviewRow } from '../../../server/http/contract.ts';

const clear = (text = ''): PreviewCell => ({ text, state: text === '' ? 'empty' : 'read', reason: null });
const doubt = (reason: string): PreviewCell => ({ text: 'x', state: 'doubt', reason });

function row(cells: Partial<PreviewRow> = {}): PreviewRow {
  return {
    line: 2,
    name: clear('Side'),
    section: clear(),
    quantity: clear('2'),
    length: clear('600 mm'),
    width: clear('300 mm'),
    material: clear('birch-ply-18'),
    grain: clear('along'),
    edges: { front: clear('hidden'), back: clear('hidden'), left: clear('hidden'), right: clear('hidden') },
    showFace: clear(),
    backFace: clear(),
    note: clear(),
    shape: clear('rectangle'),
    corners: { frontLeft: clear(), frontRight: clear(), backLeft: clear(), backRight: clear() },
    ...cells,
  };
}

describe('what is said of the rows of a preview', () => {
  it('says a reason that several cells share once, with all their names', () => {
    const edges = {
      front: doubt('ticked'),
      back: clear('hidden'),
      left: doubt('ticked'),
      right: clear('hidden'),
    };
    expect(rowNotes(row({ edges, quantity: doubt('no quantity') }))).toEqual([
      { fields: ['quantity'], state: 'doubt', reason: 'no quantity' },
      { fields: ['front', 'left'], state: 'doubt', reason: 'ticked' },
    ]);
    expect(rowNotes(row())).toEqual([]);
    expect([isMarked(row()), isMarked(row({ note: doubt('?') }))]).toEqual([false, true]);
  });

  it('says what four rows or more share above them, without the values in which they differ', () => {
    const named = (name: string) => row({ material: doubt(`No material is called «${name}».`) });
    const [note, ...more] = sharedNotes([named('oak'), named('ash'), named('oak'), named('elm'), row()]);
    expect(note).toMatchObject({ fields: ['material'], rows: 4, reason: 'No material is called «…».' });
    expect(more).toEqual([]);
    expect(sharedNotes([named('oak'), named('oak'), named('oak')])).toEqual([]);
    expect(sharedNotes(Array.from({ length: 4 }, () => named('oak')))[0]?.reason).toBe(
      'No material is called «oak».',
    );
  });

  it('knows the rows without any size', () => {
    expect(hasNoSize(row())).toBe(false);
    expect(hasNoSize(row({ width: clear() }))).toBe(false);
    expect(hasNoSize(row({ length: clear(), width: clear() }))).toBe(true);
  });
});
