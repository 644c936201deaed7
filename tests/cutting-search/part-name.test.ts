import { describe, expect, it } from 'vitest';
import { partName } from '../../server/cutting-search/part-name.ts';

const parts = [
  { id: '1', name: 'Back ', section: 'left bookcase' },
  { id: '2', name: 'Back', section: 'right bookcase' },
  { id: '3', name: 'Side', section: 'left bookcase' },
  { id: '4', name: 'Rail', section: '' },
  { id: '5', name: 'Rail', section: 'seat' },
  { id: '6', name: 'Rail', section: 'seat' },
  { id: '7', name: ' ', section: 'seat' },
];

describe('the name of a part in a sentence', () => {
  it.each([
    ['3', 'Side'],
    ['1', 'Back, left bookcase'],
    ['2', 'Back, right bookcase'],
    ['4', 'Rail, row 4'],
    ['6', 'Rail, row 6'],
    ['7', 'part in row 7'],
    ['9', 'part 9'],
  ])('of part %s is “%s”', (id, name) => {
    expect(partName(parts, id)).toBe(name);
  });
});
