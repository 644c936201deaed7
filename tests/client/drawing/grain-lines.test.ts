import { describe, expect, it } from 'vitest';
import { grainLines } from '../../../client/drawing/grain-lines.ts';

describe('grain lines', () => {
  it('run with the length, or across it', () => {
    for (const { from, to } of grainLines('along', 200, 60)) {
      expect(from[1]).toBe(to[1]);
      expect([from[0], to[0]]).toEqual([0, 200]);
    }
    for (const { from, to } of grainLines('across', 200, 60)) {
      expect(from[0]).toBe(to[0]);
      expect([from[1], to[1]]).toEqual([0, 60]);
    }
  });

  it('are left out for a part that may be turned', () => {
    expect(grainLines('free', 200, 60)).toEqual([]);
  });

  it('are at least two, however narrow the part', () => {
    expect(grainLines('along', 200, 4)).toHaveLength(2);
  });
});
