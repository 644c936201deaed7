import { describe, expect, it } from 'vitest';
import { closestKey } from '../../../server/exchange/document/closest-key.ts';

const keys = ['width', 'length', 'edgeFront', 'edgeBack', 'note', 'id'];

describe('the closest key', () => {
  it.each([
    ['widht', 'width'], // two letters swapped: one slip
    ['WIDTH', 'width'],
    ['lenght', 'length'],
    ['legnth', 'length'],
    ['edgefront', 'edgeFront'],
    ['edge_front', 'edgeFront'], // one letter too many
    ['edgeBak', 'edgeBack'], // one letter missing
    ['notes', 'note'],
  ])('of %s is %s', (written, meant) => {
    expect(closestKey(written, keys)).toBe(meant);
  });

  it.each(['thickness', 'x', '', 'qty', 'x'.repeat(100_000)])('of %s is none', (written) => {
    expect(closestKey(written, keys)).toBeNull();
  });

  it('is none where no keys are known', () => {
    expect(closestKey('width', [])).toBeNull();
  });
});
