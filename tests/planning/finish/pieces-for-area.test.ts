import { describe, expect, it } from 'vitest';
import { piecesForArea } from '../../../server/planning/finish/pieces-for-area.ts';

describe('pieces of abrasive', () => {
  it('are area over area per piece, not rounded here', () => {
    expect(piecesForArea({ areaM2: 6, areaPerPieceM2: 1.5 })).toBe(4);
    expect(piecesForArea({ areaM2: 1, areaPerPieceM2: 1.5 })).toBeCloseTo(2 / 3, 12);
    expect(piecesForArea({ areaM2: 0, areaPerPieceM2: 1.5 })).toBe(0);
  });

  it('refuse a piece that serves nothing', () => {
    expect(() => piecesForArea({ areaM2: 1, areaPerPieceM2: 0 })).toThrow('areaPerPieceM2');
  });
});
