import { describe, expect, it } from 'vitest';
import { figureIn } from '../../../client/state/figure-in.ts';
import { figure } from '../../../server/planning/figure.ts';

const paid = figure(1200, 'minor', { rule: 'paid', inputs: [] });
const answer = {
  revision: 4,
  forecast: paid,
  orders: [{ id: '7', paid }],
  sections: [{ id: 'left/right', cost: paid }],
};

describe('the figure a path leads to within an answer', () => {
  it('is found by names and by the ids of rows', () => {
    expect(figureIn(answer, ['forecast'])).toBe(paid);
    expect(figureIn(answer, ['orders', '7', 'paid'])).toBe(paid);
  });

  it('is found where an id holds a slash, which is encoded in the path', () => {
    expect(figureIn(answer, ['sections', encodeURIComponent('left/right'), 'cost'])).toBe(paid);
  });

  it('is null where the path leads nowhere, to something else, or nothing is known', () => {
    expect(figureIn(answer, ['orders', '8', 'paid'])).toBeNull();
    expect(figureIn(answer, ['revision'])).toBeNull();
    expect(figureIn(answer, [])).toBeNull();
    expect(figureIn(null, ['forecast'])).toBeNull();
  });
});
