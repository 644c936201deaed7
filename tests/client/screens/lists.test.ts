import { describe, expect, it } from 'vitest';
import { grouped } from '../../../client/fields/choice-input.ts';
import { reordered } from '../../../client/screens/settings/reordered.ts';

describe('a list put in another order', () => {
  it('moves one item and keeps the rest in order', () => {
    expect(reordered(['a', 'b', 'c', 'd'], 0, 2)).toEqual(['b', 'c', 'a', 'd']);
    expect(reordered(['a', 'b', 'c', 'd'], 3, 0)).toEqual(['d', 'a', 'b', 'c']);
  });

  it('stays as it is past either end', () => {
    expect(reordered(['a', 'b'], 0, -1)).toEqual(['a', 'b']);
    expect(reordered(['a', 'b'], 1, 2)).toEqual(['a', 'b']);
    expect(reordered(['a', 'b'], 5, 0)).toEqual(['a', 'b']);
  });
});

describe('choices', () => {
  it('stand in their groups, in order of first appearance', () => {
    const choice = (value: string, group?: string) =>
      group === undefined ? { value, text: value } : { value, text: value, group };
    expect(
      grouped([choice('a'), choice('b', 'g'), choice('c'), choice('d', 'g')]).map(([name, list]) => [
        name,
        list.length,
      ]),
    ).toEqual([
      ['', 2],
      ['g', 2],
    ]);
  });
});
